import { catalogue } from '../../cells/index.ts';
import '../../cells/output/cycle.work.ts';
import type { Ask } from './messages.ts';
import { work } from './work.ts';

const answer = work(catalogue, (tell) => postMessage(tell));
addEventListener('message', ({ data }: MessageEvent<Ask>) => answer(data));
