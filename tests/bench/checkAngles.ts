// npm run check:angles -- <file of the form of tests/reference/euler-cases.json>
// Prints the largest deviation; exit 1 over tolerance, 2 usage, 3 unreadable file.
import { readFileSync } from 'node:fs';
import { checkCases, type CaseFile } from '../reference/eulerCases.ts';

const file = process.argv[2];
if (!file) {
  console.error('Usage: npm run check:angles -- <euler-cases.json>');
  process.exit(2);
}
const rows = (() => {
  try {
    return checkCases(JSON.parse(readFileSync(file, 'utf8')) as CaseFile);
  } catch (error) {
    console.error(`${file} could not be read as euler cases: ${(error as Error).message}`);
    process.exit(3);
  }
})();

for (const r of rows)
  console.log(
    `${r.id.padEnd(5)} ${r.largestDeg.toExponential(2).padStart(10)} deg  bound ${r.toleranceDeg}  ${r.worst}${r.passed ? '' : '  OVER'}`,
  );
const worst = rows.reduce((a, b) => (b.largestDeg > a.largestDeg ? b : a));
const failed = rows.filter((r) => !r.passed);
console.log(
  `${rows.length} cases, largest deviation ${worst.largestDeg.toExponential(2)} deg (${worst.id} ${worst.worst}), ${failed.length} over tolerance`,
);
process.exit(failed.length > 0 || rows.length === 0 ? 1 : 0);
