import { StreamableFile } from '@nestjs/common';

/** A text as a file to save. */
export function download(text: string, type: string, name: string): StreamableFile {
  const bytes = Buffer.from(text);
  return new StreamableFile(bytes, {
    ...{ type: `${type}; charset=utf-8`, length: bytes.length },
    disposition: `attachment; filename="${name}"`,
  });
}

/** Such a file in the API's description. */
export const fileContent = (type: string) =>
  ({ [type]: { schema: { type: 'string', format: 'binary' } } }) as const;
