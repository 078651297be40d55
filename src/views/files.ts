/** Asks for one file; nothing comes of it if none is chosen. */
export function pickFile(accept: string, picked: (file: File) => void): void {
  const picker = Object.assign(document.createElement('input'), { type: 'file', accept });
  picker.addEventListener('change', () => {
    const file = picker.files?.[0];
    if (file) picked(file);
  });
  picker.click();
}

/** Hands the reader a file. */
export function saveFile(name: string, text: string, type: string): void {
  const link = Object.assign(document.createElement('a'), {
    href: URL.createObjectURL(new Blob([text], { type })),
    download: name,
  });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** A title as the name of a file, without what file systems mind. */
export const fileName = (title: string, otherwise: string): string =>
  title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || otherwise;
