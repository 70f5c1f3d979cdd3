import type { Cue } from '../../../coaching/judgement.ts';
import { ADVICE_FEWEST, type NextStep } from '../../../coaching/nextStep.ts';
import type { PracticeSummary } from '../../../coaching/summary.ts';

const mixText = ({ mix }: PracticeSummary): string => {
  const { rehearsals, balls } = mix.asked;
  const first = rehearsals === 1 ? 'eine Übung' : `${rehearsals} Übungen`;
  return `${first}, dann ${balls === 1 ? 'ein Ball' : `${balls} Bälle`}`;
};

function oneThing(s: PracticeSummary, cueText: (cue: Cue) => string): string {
  const { text } = s.next;
  const fault = s.faults.find((f) => text.includes(f.cue.text));
  if (fault === undefined) return text;
  return `Eine Sache fürs nächste Mal: ${cueText(fault.cue)} (bei ${fault.count} von ${s.scored} Übungen)`;
}

const FIXED: Partial<Readonly<Record<NextStep['code'], string>>> = {
  pain: 'Der Schmerz geht vor: Folge dem Rat oben, bevor du wieder übst.',
  less: 'Mach beim nächsten Mal weniger Wiederholungen.',
  smaller: 'Mach die Bewegung kleiner und bleib in deinem angenehmen Bereich.',
  'lower-drop': 'Fang den Schläger früher oder nimm einen leichteren.',
  'shorter-swings':
    'Deine Bälle zeigen weniger als die Hälfte der zusätzlichen Beugung deiner Übungen. Versuch kürzere Schwünge.',
  'go-on': 'Die meisten Übungen waren richtig. Mach weiter nach Plan.',
  'same-again': 'Kein einzelner Fehler sticht heraus. Übe denselben Plan noch einmal.',
};

/** What to do next time, from the facts that it was drawn from. */
export function nextStep(s: PracticeSummary, cueText: (cue: Cue) => string): string {
  switch (s.next.code) {
    case 'too-little':
      return `Noch nicht genug Daten für einen Rat: ${s.scored} von mindestens ${ADVICE_FEWEST} Übungen konnten gewertet werden.`;
    case 'one-thing':
      return oneThing(s, cueText);
    case 'hit-balls':
      return `Schlag zwischendurch Bälle: ${mixText(s)}.`;
    case 'keep-mix':
      return `Halte das Verhältnis ein: ${mixText(s)}.`;
    default:
      return FIXED[s.next.code] ?? s.next.text;
  }
}
