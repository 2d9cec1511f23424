/** Files in and out of the browser. */

/** Share sheet where it takes files (tablets), else a download. */
export async function saveFile(name: string, text: string, type: string): Promise<void> {
  const blob = new Blob([text], { type });
  const file = new File([blob], name, { type });
  const coarse = matchMedia('(pointer: coarse)').matches;
  if (coarse && navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return;
    } catch (reason) {
      if (reason instanceof DOMException && reason.name === 'AbortError') return;
    }
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Largest file that is read. */
export const FILE_LIMIT = 10_000_000;

/** Undefined where no file was chosen; a file above the limit is an error in words. */
export function pickFile(
  accept: string,
): Promise<{ readonly name: string; readonly text: string } | undefined> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(undefined));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (!file) return resolve(undefined);
      if (file.size > FILE_LIMIT)
        return reject(
          new RangeError(`${file.name} has ${Math.ceil(file.size / 1e6)} MB; at most 10 MB are read`),
        );
      file.text().then((text) => resolve({ name: file.name, text }), reject);
    });
    input.click();
  });
}
