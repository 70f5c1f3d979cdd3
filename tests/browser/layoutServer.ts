/** Serves the page with the drawn loop of `tests/practice/scripted.ts`, for layout work: `tsx tests/browser/layoutServer.ts [port]`. */
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import { HandSource, loopChain } from '../practice/scripted.ts';

const now = (): number => performance.now();
const source = new HandSource();
const practice = livePractice({
  practiceId: 'layout',
  source,
  chain: loopChain,
  settings: { hand: process.argv[3] === 'left' ? 'left' : 'right', plan: DEFAULT_PLAN },
  now,
});
const app = await buildStudentApp({ practice, now });
await app.listen({ host: '127.0.0.1', port: Number(process.argv[2] ?? 4180) });
practice.start();
let timeS = 0;
setInterval(() => source.packets((timeS += 0.02)), 20);
console.log(`http://127.0.0.1:${process.argv[2] ?? 4180}`);
