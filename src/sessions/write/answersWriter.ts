import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Answer } from '../../sensors/clock/asked.ts';
import type { SensorRole } from '../../sensors/sample.ts';
import { ANSWERS_FILE, ANSWERS_HEADER, answerRow } from '../clockAnswers.ts';
import { type AppendFile, createAppendFile } from './appendFile.ts';

/** What sensors answered when they were asked for their time. The file is made with the first answer. */
export interface AnswersWriter extends Pick<AppendFile, 'flush' | 'waiting' | 'close'> {
  answer(sensor: SensorRole, answer: Answer): void;
}

export function createAnswersWriter(folder: string): AnswersWriter {
  const path = join(folder, ANSWERS_FILE);
  let waiting = '';
  let file: AppendFile | null = null;
  return {
    answer: (sensor, answer) => void (waiting += answerRow(sensor, answer)),
    waiting: () => waiting.length + (file?.waiting() ?? 0),
    async flush() {
      if (file === null && waiting === '') return;
      if (file === null) {
        await mkdir(dirname(path), { recursive: true });
        file = await createAppendFile(path);
        file.append(Buffer.from(ANSWERS_HEADER));
      }
      if (waiting !== '') file.append(Buffer.from(waiting));
      waiting = '';
      await file.flush();
    },
    close: async () => file?.close(),
  };
}
