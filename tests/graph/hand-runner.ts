import type { Job, News, Runner } from '../../src/graph/runner.ts';

/** A job that does nothing until the test makes it speak. */
export interface HandJob extends Job {
  stopped: boolean;
  ended: boolean;
  report(news: News): void;
  progress(done: number): void;
  provisional(value: unknown, done: number): void;
  answer(value: unknown): void;
}

/** A runner driven by hand: jobs lie in the order they were started, and can speak even after they were stopped. */
export class HandRunner implements Runner {
  readonly jobs: HandJob[] = [];

  start(job: Job, tell: (news: News) => void): () => void {
    const report = (news: News): void => {
      if (news.is === 'ready' || news.is === 'fault') mine.ended = true;
      tell(news);
    };
    const mine: HandJob = {
      ...job,
      stopped: false,
      ended: false,
      report,
      progress: (done) => report({ is: 'waiting', done }),
      provisional: (value, done) => report({ is: 'coming', value, done }),
      answer: (value) => report({ is: 'ready', value }),
    };
    this.jobs.push(mine);
    return () => {
      mine.stopped = true;
    };
  }

  get running(): readonly HandJob[] {
    return this.jobs.filter((job) => !job.stopped && !job.ended);
  }
  get last(): HandJob {
    return this.jobs.at(-1)!;
  }
}
