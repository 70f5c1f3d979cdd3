#!/usr/bin/env node
import { once } from 'node:events';
import type { CliIo } from './cli/command.ts';
import { runCli } from './cli/run.ts';

// a reader that has seen enough (head, a closed pager) is no fault
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  process.exit(error.code === 'EPIPE' ? 0 : 1);
});

const io: CliIo = {
  async out(text) {
    if (!process.stdout.write(text)) await once(process.stdout, 'drain');
  },
  err: (text) => void process.stderr.write(text),
  watched: process.stderr.isTTY,
};

process.exitCode = await runCli(process.argv.slice(2), io);
