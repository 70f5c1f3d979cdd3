import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { HelpPage } from './HelpPage.tsx';

/** Help beside the practice, drawn for the hand of the person. */
export function HelpScreen() {
  const leftHanded = useSection('hand') === 'left';
  return <HelpPage topics={t.help.student} leftHanded={leftHanded} />;
}
