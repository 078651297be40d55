// What loads behind the first readouts: fields, chapters and figures.
import './choice-field.ts';
import './number-field.ts';
import './chapter-section.ts';
import './comparison-table.ts';
import './curve-figure.ts';
import './drawn-figure.ts';
import './guide-panel.ts';
import './toast-line.ts';
