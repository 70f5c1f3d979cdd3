import { type ResourceLimits, Worker } from 'node:worker_threads';

/**
 * A thread of the module `name` beside `beside` (its `import.meta.url`). Out of the sources, as tests run it, the
 * thread has to learn TypeScript first.
 */
export function startThread(name: string, beside: string, resourceLimits?: ResourceLimits): Worker {
  const source = beside.endsWith('.ts');
  const script = new URL(`./${name}.${source ? 'ts' : 'js'}`, beside);
  const limits = resourceLimits === undefined ? {} : { resourceLimits };
  if (!source) return new Worker(script, limits);
  const learn = `import('tsx/esm/api').then(({ register }) => (register(), import(${JSON.stringify(script.href)})))`;
  return new Worker(learn, { eval: true, ...limits });
}
