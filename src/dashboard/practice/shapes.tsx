import type { Mark } from './kind.ts';

/** A mark as a drawing in a 100 x 100 box; known by its outline alone. */
export function Shape({ mark }: { readonly mark: Mark | 'rehearsal' | 'none' }) {
  return (
    <svg class={`shape shape-${mark}`} viewBox="0 0 100 100" aria-hidden="true" focusable="false">
      {drawing(mark)}
    </svg>
  );
}

function drawing(mark: Mark | 'rehearsal' | 'none') {
  switch (mark) {
    case 'rehearsal':
      return <circle cx="50" cy="50" r="46" class="fill" />;
    case 'passed':
      return (
        <>
          <circle cx="50" cy="50" r="46" class="fill" />
          <path d="M27 52 44 69 74 35" class="cut" />
        </>
      );
    case 'notPassed':
      return <circle cx="50" cy="50" r="40" class="ring" />;
    case 'notScored':
      return <circle cx="50" cy="50" r="41" class="ring dotted" />;
    case 'ball':
      return <path d="M50 12 92 86H8Z" class="fill" />;
    case 'practiceSwing':
      return <path d="M14 50H86" class="bar" />;
    case 'ignored':
      return <circle cx="50" cy="50" r="10" class="fill" />;
    case 'none':
      return <circle cx="50" cy="50" r="44" class="faint" />;
  }
}
