// What loads behind the first readouts: fields, chapters and figures.
import './choice-field.ts';
import './number-field.ts';
import './chapter-section.ts';
import './comparison-table.ts';
import './curve-figure.ts';
import './drawn-figure.ts';
import './toast-line.ts';
import './variant-mark.ts';
import './variants-panel.ts';
