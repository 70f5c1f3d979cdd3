import { browserPath } from './chromium.ts';

/** Before the tests of the page: without a browser they end with one sentence, not with a stack each. */
export default function setup(): void {
  try {
    browserPath();
  } catch (error) {
    console.error((error as Error).message);
    process.exit(1);
  }
}
