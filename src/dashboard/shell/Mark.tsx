import { t } from '../strings/strings.ts';

/** The product's sign and name. */
export function Mark() {
  return (
    <p class="mark">
      <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
        <circle cx="16" cy="8.5" r="5" />
        <path d="M5 14a11 11 0 0 0 22 0" />
      </svg>
      <span>{t.product}</span>
    </p>
  );
}
