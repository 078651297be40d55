import fc from 'fast-check';

// The same random cases on every run, so that a red test means a change; the soak draws others each time.
if (!process.env['SOAK']) fc.configureGlobal({ seed: 20260712 });
