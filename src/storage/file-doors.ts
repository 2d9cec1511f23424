/** Files in and out of the browser. */

/** Largest file that is read. */
export const FILE_LIMIT = 40 * 1024 * 1024;

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** Share sheet where it takes files (tablets), else a download; 'text' where there is neither. Called within a gesture. */
export async function saveFile(
  name: string,
  content: string | Blob,
  type: string,
): Promise<'shared' | 'downloaded' | 'cancelled' | 'text'> {
  const blob = new Blob([content], { type });
  const file = new File([blob], name, { type });
  const coarse = matchMedia('(pointer: coarse)').matches;
  if (coarse && navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: name });
      return 'shared';
    } catch (reason) {
      if (reason instanceof DOMException && reason.name === 'AbortError') return 'cancelled';
    }
  }
  const link = document.createElement('a');
  if (!('download' in link)) return 'text';
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  return 'downloaded';
}

/** Throws in words where the file is too large. */
export async function readFile(file: File): Promise<TextFile> {
  if (file.size > FILE_LIMIT)
    throw new RangeError(`${file.name} has ${Math.ceil(file.size / 1e6)} MB; at most 40 MB are read`);
  return { name: file.name, text: await file.text() };
}

/** Undefined where no file was chosen; a file above the limit is an error in words. */
export function pickFile(accept: string): Promise<TextFile | undefined> {
  return new Promise((resolve, reject) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('cancel', () => resolve(undefined));
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (file) readFile(file).then(resolve, reject);
      else resolve(undefined);
    });
    input.click();
  });
}

interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files?: readonly { getFile(): Promise<File> }[] }) => void): void;
}

/** Calls back with every file by which the system starts the program, where the browser knows of that. */
export function onLaunch(open: (file: File) => void): void {
  const { launchQueue } = globalThis as { readonly launchQueue?: LaunchQueue };
  launchQueue?.setConsumer(async ({ files = [] }) => {
    for (const handle of files) open(await handle.getFile());
  });
}
