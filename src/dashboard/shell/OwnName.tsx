import { useSection } from '../feed/hooks.ts';
import { Own } from './Own.tsx';

/** What the student wants to be called, where they said so. */
export function OwnName() {
  const name = useSection('person')?.about?.name ?? '';
  return name === '' ? null : (
    <span class="own-name">
      <Own>{name}</Own>
    </span>
  );
}
