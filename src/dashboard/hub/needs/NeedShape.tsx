import type { NeedCode } from '../../../coaching/attention.ts';

/** A need as a drawing in a 100 x 100 box, known by its outline alone; its word stands beside it. */
export function NeedShape({ code }: { readonly code: NeedCode }) {
  return (
    <svg class={`need-shape need-${code}`} viewBox="0 0 100 100" aria-hidden="true">
      {drawing(code)}
    </svg>
  );
}

function drawing(code: NeedCode) {
  switch (code) {
    case 'pain':
      return <path class="solid" d="M36 8h28v28h28v28H64v28H36V64H8V36h28z" />;
    case 'warning':
      return (
        <>
          <path class="solid" d="M50 8 96 90H4z" />
          <path class="cut" d="M50 38v24M50 74v5" />
        </>
      );
    case 'unreviewed':
      return (
        <>
          <path class="line" d="M6 50q44-50 88 0q-44 50-88 0z" />
          <circle class="solid" cx="50" cy="50" r="14" />
        </>
      );
    case 'unanswered':
      return <path class="line" d="M10 16h80v50H46L26 86V66H10z" />;
    case 'mix':
      return (
        <>
          <circle class="line" cx="26" cy="50" r="17" />
          <path class="line" d="M72 30 92 66H52z" />
        </>
      );
    case 'volume':
      return <path class="line" d="M14 88V60M38 88V44M62 88V26M86 88V10" />;
    case 'no-practice':
      return (
        <>
          <circle class="line" cx="50" cy="50" r="40" />
          <path class="line" d="M50 26v26l18 10" />
        </>
      );
    case 'drift':
      return <path class="line" d="M10 22h80M10 44h40L84 84M84 58v26H58" />;
    case 'seen-warning':
      return <path class="line" d="M50 12 94 88H6z" />;
    case 'none':
      return <path class="line" d="M14 54 40 80 88 24" />;
  }
}
