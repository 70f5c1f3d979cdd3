import { useEffect, useState } from 'preact/hooks';
import { hrefOf } from '../shell/router.ts';
import { t } from '../strings/strings.ts';
import { coachLink } from './api.ts';

/** One line where the coach has written something new. */
export function CoachWrote() {
  const [unread, setUnread] = useState(0);
  useEffect(() => {
    coachLink().then(
      (link) => setUnread(link.unread),
      () => undefined,
    );
  }, []);
  if (unread === 0) return null;
  return (
    <p>
      <a href={hrefOf('coach')}>{t.coach.wrote(unread)}</a>
    </p>
  );
}
