/** Longest side of a photo as it is sent: enough to read a part number, and light on a field's network. */
const LONGEST_PX = 2000;

/** A photo drawn anew at a sensible size. That leaves behind what the camera noted, the place too, before it leaves the phone. */
export async function lighter(file: File): Promise<Blob> {
  try {
    const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_PX / Math.max(image.width, image.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(image.width * scale));
    canvas.height = Math.max(1, Math.round(image.height * scale));
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    image.close();
    return await new Promise((done) => canvas.toBlob((blob) => done(blob ?? file), 'image/jpeg', 0.85));
  } catch {
    // Whatever it is, the service says whether it can be taken.
    return file;
  }
}

/** The form that the service takes a photo in. */
export function formOf(photo: Blob): FormData {
  const form = new FormData();
  form.append('photo', photo, 'photo.jpg');
  return form;
}
