// The figures of the page, loaded behind its first readouts.
import './curve-figure.ts';
import './drawn-figure.ts';
import './sweep-figure.ts';
