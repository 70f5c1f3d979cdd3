import QRCode from 'qrcode';
import type { QrRows } from './hubContract/people.ts';

/** A text as modules of a QR code. */
export function qrRows(text: string): QrRows {
  const { size, data } = QRCode.create(text, { errorCorrectionLevel: 'M' }).modules;
  return Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => (data[y * size + x] ? '1' : '0')).join(''),
  );
}
