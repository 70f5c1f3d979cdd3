import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';

/** Something to carry elsewhere: readable, selectable, and copied by one press where the browser allows it. */
export function Copied({ label, text }: { readonly label: string; readonly text: string }) {
  const [done, setDone] = useState(false);
  const copy = (): void =>
    void navigator.clipboard?.writeText(text).then(
      () => setDone(true),
      () => setDone(false),
    );
  return (
    <div class="copied">
      <span class="label">{label}</span>
      <code>{text}</code>
      {/* Browsers offer the clipboard to secure pages only. */}
      {isSecureContext && (
        <button type="button" class="quiet" onClick={copy}>
          {done ? h.entry.pairing.copied : h.entry.pairing.copy}
        </button>
      )}
    </div>
  );
}
