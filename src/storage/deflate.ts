/** Packing and unpacking of texts by the browser's own DEFLATE. */

async function bytesOf(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel();
      throw new RangeError(`more than ${most} bytes`);
    }
    pieces.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Raw DEFLATE of the UTF-8 bytes of a text. */
export function packed(text: string): Promise<Uint8Array> {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return bytesOf(stream, Infinity);
}

/** The reverse. Rejects where the bytes are no such thing, are no UTF-8, or give more than `most` bytes. */
export async function unpacked(bytes: Uint8Array, most: number): Promise<string> {
  const stream = new Blob([new Uint8Array(bytes)])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  return new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(stream, most));
}
