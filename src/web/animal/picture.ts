// A photograph made small enough to keep: at most 1 400 picture elements a side, JPEG; nothing but the picture goes along.

export interface Picture {
  readonly url: string;
  readonly width: number;
  readonly height: number;
  /** JPEG as base64, without what the camera wrote into the file. */
  readonly base64: string;
}

const longestSide = 1400;
/** Under the server's limit of 400 000 bytes. */
const largestBase64 = 500_000;

export async function pictureFrom(file: Blob): Promise<Picture> {
  const bitmap = await createImageBitmap(file);
  const scale = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  let quality = 0.85;
  let url = canvas.toDataURL('image/jpeg', quality);
  while (url.length > largestBase64 && quality > 0.3) {
    quality -= 0.15;
    url = canvas.toDataURL('image/jpeg', quality);
  }
  return { url, width: canvas.width, height: canvas.height, base64: url.slice(url.indexOf(',') + 1) };
}
