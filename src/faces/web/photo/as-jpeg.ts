/** As fine as phones save them: the copy must not blur the print's edges. */
const quality = 0.95;

/**
 * A photo that the shop could not unpack, as JPEG by the browser's own decoder: some browsers know HEIC, the shop does not. Turned
 * upright on the way. Undefined where it is no HEIF, or this browser does not know it either.
 */
export async function asJpeg(photo: Blob): Promise<Blob | undefined> {
  const [f, t, y, p] = new Uint8Array(await photo.slice(4, 8).arrayBuffer());
  if (f !== 0x66 || t !== 0x74 || y !== 0x79 || p !== 0x70) return undefined;
  try {
    const picture = await createImageBitmap(photo);
    const canvas = document.createElement('canvas');
    canvas.width = picture.width;
    canvas.height = picture.height;
    canvas.getContext('2d')!.drawImage(picture, 0, 0);
    picture.close();
    const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
    // A canvas that is too large for the phone comes out empty.
    return jpeg && jpeg.size > 0 ? jpeg : undefined;
  } catch {
    return undefined;
  }
}
