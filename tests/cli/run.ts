import { runCli } from '../../src/main/cli/run.ts';

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process. */
export async function cli(...args: string[]): Promise<Outcome> {
  let out = '';
  let err = '';
  const code = await runCli(args, {
    out: (text) => {
      out += text;
      return Promise.resolve();
    },
    err: (text) => void (err += text),
    watched: false,
  });
  return { code, out, err };
}
