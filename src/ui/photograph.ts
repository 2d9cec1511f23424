/** A photograph made small enough for the notebook's file: scaled by canvas, so that place and device written into it stay behind. */

import type { Photograph } from '../document/index.ts';

const LONGEST = 1280;
const MOST_BYTES = 120_000;
const QUALITIES = [0.85, 0.75, 0.65, 0.55, 0.45] as const;
const SMALLER = 0.8;

const blobOf = (canvas: HTMLCanvasElement, quality: number): Promise<Blob> =>
  new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new RangeError('the picture could not be written'))),
      'image/jpeg',
      quality,
    ),
  );

async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}

/** Longest side 1 280 and at most 120 kB, JPEG. Rejects where the file is no picture the browser can read. */
export async function scaledPhotograph(
  file: Blob,
  words: string,
  at: string,
): Promise<Omit<Photograph, 'id'>> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => {
    throw new RangeError('This file is no picture that can be read here.');
  });
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d');
  if (!context) throw new RangeError('This browser can not scale pictures.');
  let scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  for (;;) {
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(picture, 0, 0, canvas.width, canvas.height);
    for (const quality of QUALITIES) {
      const blob = await blobOf(canvas, quality);
      if (blob.size > MOST_BYTES) continue;
      picture.close();
      const { width, height } = canvas;
      return { type: 'image/jpeg', data: await base64Of(blob), width, height, words, at };
    }
    scale *= SMALLER;
  }
}

export const pictureSource = ({ type, data }: Pick<Photograph, 'type' | 'data'>): string =>
  `data:${type};base64,${data}`;
