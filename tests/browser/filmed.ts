import type { Page } from 'playwright-core';

/** A second of film as a phone would make it (H.264 in mp4): a square that crosses the picture. */
export async function filmed(page: Page, width = 160, height = 120): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([width, height]) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [width, height];
      const brush = canvas.getContext('2d')!;
      const recorder = new MediaRecorder(canvas.captureStream(30), {
        mimeType: 'video/mp4;codecs=avc1.42E01E',
      });
      const parts: Blob[] = [];
      recorder.ondataavailable = ({ data }) => void parts.push(data);
      const ended = new Promise((resolve) => (recorder.onstop = resolve));
      recorder.start();
      for (let i = 0; i < 36; i++) {
        brush.clearRect(0, 0, width, height);
        brush.fillRect(i * 4, 40, 30, 30);
        await new Promise((resolve) => setTimeout(resolve, 33));
      }
      recorder.stop();
      await ended;
      const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
      return btoa(bytes.reduce((text, byte) => text + String.fromCharCode(byte), ''));
    },
    [width, height] as const,
  );
  return Buffer.from(base64, 'base64');
}
