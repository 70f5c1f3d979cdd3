import type { Strings } from '../shape.ts';

const minutes = (s: number): string =>
  s >= 60 ? `${Math.floor(s / 60)} min ${String(s % 60).padStart(2, '0')} s` : `${s} s`;

const clock = new Intl.DateTimeFormat('de-DE', { hour: '2-digit', minute: '2-digit' });

export const secondScreen: Strings['secondScreen'] = {
  title: 'Zweiter Bildschirm',
  lead: 'Stell ein Handy oder Tablet dort auf, wo du übst: Es zeigt den Zustand, das Halten, das Urteil und den Hinweis in sehr großen Worten. Es zeigt nur; der Ton und alle Knöpfe bleiben hier.',
  loading: 'Der Dienst wird gefragt …',
  none: 'Hinter dieser Seite steht kein zweiter Bildschirm.',
  off: 'Er ist aus: Nur dieser Computer erreicht das Training. Nach jedem Start des Dienstes ist er wieder aus.',
  choose: 'In diesem Netz zeigen',
  card: (address, card) => `${address} (${card})`,
  noNetwork:
    'Dieser Computer ist gerade in keinem privaten Netz. Verbinde ihn mit dem WLAN, in dem das andere Gerät ist, dann sieh noch einmal nach.',
  look: 'Noch einmal nachsehen',
  switchOn: 'Einschalten',
  switchOff: 'Ausschalten',
  firewall:
    'Findet das andere Gerät nichts: Die Firewall deines Computers fragt vielleicht, ob sie es hereinlassen soll; erlaube nur private Netze. Gastnetze trennen Geräte oft voneinander.',
  honest:
    'Der Weg zum anderen Bildschirm ist nicht verschlüsselt: Wer im selben Netz ist, könnte mitlesen, was er zeigt. Das ist das laufende Training: Zustand, Halten, Urteil, Hinweis, Zahlen und stehende Warnungen; eine Schmerzwarnung nennt die Zahl, die du angegeben hast. Dein Name, deine Antworten, Notizen, dein Plan und frühere Einheiten werden nicht gesendet. Nutze ihn in einem eigenen Netz.',
  unreachable:
    'Dieser Computer hat die Adresse unten nicht mehr. Schalte aus und mit der neuen wieder ein.',
  open: 'Auf dem anderen Gerät: Scanne das hier oder tippe die Adresse ein',
  qr: (url) => `Code zum Scannen: ${url}`,
  codeTitle: 'Dann tippe dort diesen Code ein',
  qrWhy:
    'Der Code zum Scannen enthält nur die Adresse, damit ein Foto davon niemanden hereinlässt.',
  codeLeft: (s) => `Gilt noch ${minutes(s)}, für einen Bildschirm.`,
  codeState: {
    waiting: '',
    used: 'Dieser Code ist benutzt. Ein weiterer Bildschirm braucht einen neuen.',
    expired: 'Dieser Code ist abgelaufen.',
    spent:
      'Fünf falsche Codes wurden eingetippt. Warst du das nicht, hat es jemand anders im Netz versucht.',
  },
  newCode: 'Neuer Code',
  screens: 'Zugelassene Bildschirme',
  noScreens: 'Noch keiner.',
  screen: (address, at) => `${address}, seit ${at}`,
  time: (ms) => clock.format(ms),
  watching: 'zeigt gerade',
  notWatching: 'nicht verbunden',
  end: 'Beenden',
  endNamed: (address) => `Bildschirm an ${address} beenden`,
  endAll: 'Alle beenden',

  pair: {
    title: 'Zweiter Bildschirm',
    lead: 'Tippe die sechs Ziffern ein, die der Laptop unter „Zweiter Bildschirm“ zeigt.',
    code: 'Code',
    go: 'Das Training zeigen',
    looking: 'Der Laptop wird gesucht …',
    unreachable: 'Der Laptop antwortet nicht. Es wird von selbst wieder versucht.',
    ended: 'Der Laptop hat diesen Bildschirm beendet. Ein neuer Code lässt ihn wieder herein.',
    refused: {
      'wrong-code': 'Das ist nicht der Code, den der Laptop zeigt.',
      'no-code': 'Es wartet kein Code mehr. Lass dir am Laptop einen neuen geben.',
    },
  },

  watch: {
    viewOnly: 'Nur zum Ansehen. Der Ton kommt vom Laptop.',
    lost: 'Keine Verbindung',
    lostDetail: (s) => `Wird wieder versucht. Seit ${minutes(s)} nichts gehört.`,
    getReady: 'Bereit machen',
    atLaptop: (step) => `Am Laptop: ${step}`,
    afterwards: 'Das Training ist vorbei. Am Laptop geht es weiter.',
    stop: 'Stopp',
    stopped: 'Hör für heute auf. Lies die Warnung.',
    paused: 'Nichts wird gezählt. Am Laptop geht es weiter.',
    refused:
      'Die Kalibrierung wurde abgelehnt. Lies unten, warum; beginne sie am Laptop noch einmal.',
    acknowledge: 'Lies und bestätige sie am Laptop.',
    sourceFailed: 'Die Sensoren haben aufgehört. Sieh am Laptop nach.',
    awake:
      'Dieser Browser hält den Bildschirm nicht von selbst wach: Wähle in den Einstellungen des Geräts eine lange Zeit bis zum Ruhezustand.',
    look: 'Aussehen',
  },
};
