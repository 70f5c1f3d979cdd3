import type { SessionList } from '../../streaming/sessionsContract.ts';
import { useLoad } from '../sessions/useLoad.ts';
import { t } from '../strings/strings.ts';

/** Where on this computer everything is. */
export function FolderPart() {
  const { data } = useLoad<SessionList>('sessions');
  if (data === null) return null;
  return (
    <fieldset>
      <legend>{t.settings.folder}</legend>
      <p class="fine folder">{t.settings.folderPath(data.folder)}</p>
    </fieldset>
  );
}
