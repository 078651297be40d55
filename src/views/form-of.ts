import type { Form } from '../plots/forms.ts';

const known = new Map<string, Form>();
let isAllThere = false;

/** How a figure is drawn; undefined until it is loaded, behind the first readouts: `loaded` hears of that. */
export function formOf(name: string, loaded: () => void): Form | undefined {
  const form = known.get(name);
  if (!form && isAllThere) throw new Error(`no form is called "${name}"`);
  if (!form) void load(name).then(loaded);
  return form;
}

async function load(name: string): Promise<void> {
  const keep = (forms: Readonly<Record<string, Form>>): void => {
    for (const [each, form] of Object.entries(forms)) known.set(each, form);
  };
  keep((await import('../plots/forms.ts')).forms);
  if (known.has(name)) return;
  keep((await import('../plots/later-forms.ts')).laterForms);
  isAllThere = true;
}
