/** Processor time of this process for `work`, done `times` times, ms: what else the machine does is not in it. */
export function cpuMs(work: () => unknown, times = 1): number {
  const before = process.cpuUsage();
  for (let n = 0; n < times; n++) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
