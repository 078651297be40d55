/**
 * A picture that stands by itself: its size, a white or dark ground, a font, and every `var(--token)` replaced by what
 * `token` says it is here. `style` holds the few rules that the page's style sheet gives figures.
 */
export function standalone(
  markup: { readonly width: number; readonly height: number; readonly body: string; readonly title: string },
  token: (name: string) => string,
): string {
  const { width, height } = markup;
  const style = [
    `text{fill:var(--ink-2);font:13px sans-serif}`,
    `.strong{fill:var(--ink);font-weight:600}`,
    `.hand{fill:var(--hand);font-weight:600}`,
    `.axis{stroke:var(--edge);fill:none}`,
    `.grid{stroke:var(--rule);stroke-dasharray:1 4;fill:none}`,
    `.hair{stroke:var(--hand);fill:none}`,
  ].join('');
  const resolved = (text: string): string =>
    text.replace(/var\(--([a-z0-9-]+)\)/g, (_, name: string) => token(name) || 'none');
  const title = markup.title.replace(/[&<>]/g, (c) => `&#${c.charCodeAt(0)};`);
  return resolved(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><title>${title}</title><style>${style}</style><rect width="100%" height="100%" fill="var(--paper)"/>${markup.body}</svg>\n`,
  );
}
