import { html, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cell, Input } from '../graph/cell.ts';
import { type Action, type FieldWhen, isWhen } from '../graph/chapter.ts';
import type { Rows } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import type { Store } from '../notebook/store.ts';
import './choice-field.ts';
import './number-field.ts';
import './readout-row.ts';
import './table-field.ts';

type Fields = readonly (Cell | FieldWhen)[];

/** The choices that decide which fields are asked for. */
export const choicesOf = (fields: Fields): readonly Input<string>[] => [
  ...new Set(fields.filter(isWhen).map((f) => f.when)),
];
/** The fields that are asked for as the choices stand. */
export const asked = (store: Store, fields: Fields): readonly Cell[] =>
  fields.flatMap((f) => {
    if (!isWhen(f)) return [f];
    return f.is.includes(String(lastGood(store.state(f.when)))) ? [f.field] : [];
  });

export const fieldList = (store: Store, fields: Fields): TemplateResult =>
  html`<div class="fields">
    ${repeat(
      asked(store, fields),
      (c) => c.id,
      (c) =>
        c.kind.name === 'choice'
          ? html`<choice-field .store=${store} .cell=${c as Input<string>}></choice-field>`
          : c.kind.name === 'table'
            ? html`<table-field .store=${store} .cell=${c as Input<Rows>}></table-field>`
            : html`<number-field .store=${store} .cell=${c}></number-field>`,
    )}
  </div>`;

export function actionList(store: Store, actions: readonly Action[]): TemplateResult {
  if (actions.length > 0) void import('./chapter-action.ts');
  return html`${actions.map((action) => html`<chapter-action .store=${store} .action=${action}></chapter-action>`)}`;
}

type Result = Exclude<Cell, { role: 'input' }>;
const isResult = (c: Cell): c is Result => c.role !== 'input';
/** The results that stand in rows: quick curves are figures. */
const isRow = (c: Result): boolean => c.kind.name !== 'curve' || c.role === 'slow';

export const answerList = (store: Store, answers: readonly Cell[]): TemplateResult =>
  html`${repeat(
    answers.filter(isResult).filter(isRow),
    (c) => c.id,
    (c) => html`<readout-row .store=${store} .cell=${c}></readout-row>`,
  )}`;
