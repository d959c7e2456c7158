/** Hands a file to the reader: what is for signed-in people cannot be a plain link. */
export function save(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken it by the time it gets round to this.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
