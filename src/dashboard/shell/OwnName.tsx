import { useSection } from '../feed/hooks.ts';

/** What the student wants to be called, where they said so. */
export function OwnName() {
  const name = useSection('person')?.about?.name ?? '';
  return name === '' ? null : <span class="own-name">{name}</span>;
}
