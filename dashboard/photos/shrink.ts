const LONGEST = 1600; // px of the longer side; ours: spots on a leaf are still to be seen
const QUALITY = 0.8;

/**
 * A picture made smaller in this browser, as a JPEG: what a camera wrote beside it (place, time) is
 * not in it any more. null for a file that is no picture this browser can read.
 */
export async function shrink(file: Blob): Promise<Blob | null> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return null;
  }
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d');
  if (pen) {
    // A JPEG knows no holes: they would turn black.
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  }
  picture.close();
  return pen && new Promise((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
}
