/** Rows as comma-separated text (RFC 4180), with the title and the caption above them as comment lines. */
export function csv(title: string, columns: readonly string[], rows: readonly (readonly string[])[]): string {
  const cell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text);
  const plain = (text: string): string => text.replace(/−/g, '-').replace(/[\u202f\u00a0]/g, ' ');
  const lines = [columns, ...rows].map((row) => row.map((text) => cell(plain(text))).join(','));
  return [`# ${plain(title).replace(/\s*[\r\n]+\s*/g, ' ')}`, ...lines, ''].join('\r\n');
}
