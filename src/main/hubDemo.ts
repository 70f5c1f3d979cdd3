import type { DemoClub } from '../hub/demo/fill.ts';

/** Says each tenth part. */
export function tellProgress(): (done: number, of: number) => void {
  let told = 0;
  return (done, of) => {
    const tenth = Math.floor((10 * done) / of);
    if (tenth === told) return;
    told = tenth;
    console.log(`Demo: ${done} of ${of} sessions simulated and analysed`);
  };
}

/** Who can sign in, and when the club is full. */
export function tellDemo({ signIns, filled }: DemoClub): void {
  console.log(
    'Demo club: invented people, simulated sessions. Sessions come in, the newest first.',
  );
  for (const { login, name } of signIns) console.log(`  ${login.padEnd(8)} ${name}`);
  console.log(`  Password of all of them, until the next start: ${signIns[0]?.password ?? ''}`);
  filled.then(
    () => console.log('Demo: the club is complete.'),
    (error: unknown) => console.error('Demo:', error instanceof Error ? error.message : error),
  );
}
