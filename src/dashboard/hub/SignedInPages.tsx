import { h } from '../strings/hub.ts';
import { ClubPage } from './club/ClubPage.tsx';
import { AccountPage } from './entry/AccountPage.tsx';
import { PairingPage } from './entry/PairingPage.tsx';
import { NeedsPage } from './needs/NeedsPage.tsx';
import { OwnPage } from './own/OwnPage.tsx';
import { HubPage } from './parts/HubPage.tsx';
import { PlanPage } from './plan/PlanPage.tsx';
import { ReportPage } from './report/ReportPage.tsx';
import { SessionPage } from './session/SessionPage.tsx';
import { useHub } from './shell/hub.ts';
import { type Place, to } from './shell/router.ts';
import { ComparePage } from './student/ComparePage.tsx';
import { StudentPage } from './student/StudentPage.tsx';
import { TextsPage } from './texts/TextsPage.tsx';

function Nowhere() {
  return (
    <HubPage title={h.shell.nowhere} narrow>
      <p>{h.shell.nowhereHelp}</p>
      <p>
        <a href={to('home')}>{h.shell.toStart}</a>
      </p>
    </HubPage>
  );
}

function StudentPart({ id, part }: Place) {
  switch (part) {
    case '':
      return <StudentPage key={id} id={id} />;
    case 'plan':
      return <PlanPage key={id} id={id} />;
    case 'report':
      return <ReportPage key={id} id={id} />;
    case 'compare':
      return <ComparePage key={id} id={id} />;
    default:
      return <Nowhere />;
  }
}

function CoachPages({ place }: { readonly place: Place }) {
  const { me } = useHub();
  switch (place.page) {
    case 'students':
      return place.id === '' ? <NeedsPage /> : <StudentPart {...place} />;
    case 'texts':
      return <TextsPage />;
    case 'club':
      return me.role === 'owner' ? <ClubPage /> : <Nowhere />;
    default:
      return <Nowhere />;
  }
}

/** The page of an address, for somebody who is signed in. */
export function SignedInPages({ place }: { readonly place: Place }) {
  const { me } = useHub();
  const student = me.role === 'student';
  switch (place.page) {
    case 'home':
    case 'setup':
      return student ? <OwnPage /> : <NeedsPage />;
    case 'sessions':
      return <SessionPage key={place.id} id={place.id} />;
    case 'account':
      return <AccountPage />;
    case 'pairing':
      return student ? <PairingPage /> : <Nowhere />;
    default:
      return student ? <Nowhere /> : <CoachPages place={place} />;
  }
}
