import type { Strings } from '../shape.ts';

const minutes = (s: number): string =>
  s >= 60 ? `${Math.floor(s / 60)} min ${String(s % 60).padStart(2, '0')} s` : `${s} s`;

const clock = new Intl.DateTimeFormat('de-DE', { hour: '2-digit', minute: '2-digit' });

export const secondScreen: Strings['secondScreen'] = {
  title: 'Zweiter Bildschirm',
  lead: 'Stell ein Handy oder Tablet dort auf, wo du übst. Es zeigt den aktuellen Schritt, das Halten, das Ergebnis und den Hinweis in sehr großer Schrift. Es ist nur zum Ansehen: Ton und Knöpfe bleiben auf diesem Computer.',
  loading: 'Wird geladen …',
  none: 'Der zweite Bildschirm ist hier nicht verfügbar.',
  off: 'Aus: Nur dieser Computer zeigt das Training. Bei jedem Neustart von Stillcatch ist er wieder aus.',
  choose: 'Netzwerk',
  card: (address, card) => `${address} (${card})`,
  noNetwork:
    'Dieser Computer ist in keinem privaten Netz. Verbinde ihn mit dem WLAN des anderen Geräts und suche noch einmal.',
  look: 'Noch einmal suchen',
  switchOn: 'Einschalten',
  switchOff: 'Ausschalten',
  firewall:
    'Wenn sich das andere Gerät nicht verbinden kann: Die Firewall deines Computers fragt vielleicht nach Erlaubnis. Erlaube nur private Netze. Gastnetze trennen Geräte oft voneinander.',
  honest:
    'Die Verbindung zum anderen Bildschirm ist nicht verschlüsselt. Wer im selben Netz ist, könnte mitlesen, was er zeigt: Schritt, Halten, Ergebnis, Hinweis, Zähler und offene Warnungen. Eine Schmerzwarnung enthält deine Schmerzangabe. Dein Name, deine Antworten, Notizen, dein Plan und frühere Trainings werden nicht gesendet. Nutze ihn in deinem eigenen Netz.',
  unreachable:
    'Die Adresse dieses Computers hat sich geändert. Schalte den zweiten Bildschirm aus und wieder ein.',
  open: 'Auf dem anderen Gerät: Scanne diesen Code oder tippe die Adresse ein',
  qr: (url) => `QR-Code: ${url}`,
  codeTitle: 'Gib dort dann diesen Code ein',
  qrWhy: 'Der QR-Code enthält nur die Adresse. Ein Foto davon lässt also niemanden herein.',
  codeLeft: (s) => `Gilt noch ${minutes(s)}, für einen Bildschirm.`,
  codeState: {
    waiting: '',
    used: 'Dieser Code wurde benutzt. Für einen weiteren Bildschirm brauchst du einen neuen.',
    expired: 'Dieser Code ist abgelaufen.',
    spent:
      'Es wurden fünf falsche Codes eingegeben. Wenn du das nicht warst, hat es jemand anders im Netz versucht.',
  },
  newCode: 'Neuer Code',
  screens: 'Verbundene Bildschirme',
  noScreens: 'Noch keiner.',
  screen: (address, at) => `${address}, seit ${at}`,
  time: (ms) => clock.format(ms),
  watching: 'verbunden',
  notWatching: 'nicht verbunden',
  end: 'Trennen',
  endNamed: (address) => `Bildschirm ${address} trennen`,
  endAll: 'Alle trennen',

  pair: {
    title: 'Zweiter Bildschirm',
    lead: 'Gib die sechs Ziffern ein, die der Laptop unter „Zweiter Bildschirm“ zeigt.',
    code: 'Code',
    go: 'Verbinden',
    looking: 'Verbindung mit dem Laptop …',
    unreachable: 'Keine Antwort vom Laptop. Automatischer neuer Versuch.',
    ended:
      'Der Laptop hat diesen Bildschirm getrennt. Gib einen neuen Code ein, um dich wieder zu verbinden.',
    refused: {
      'wrong-code': 'Falscher Code. Gib den Code ein, den der Laptop zeigt.',
      'no-code': 'Der Code gilt nicht mehr. Hol dir am Laptop einen neuen.',
    },
  },

  watch: {
    viewOnly: 'Nur zum Ansehen. Der Ton kommt vom Laptop.',
    lost: 'Keine Verbindung',
    lostDetail: (s) => `Neuer Versuch läuft. Seit ${minutes(s)} keine Daten.`,
    getReady: 'Vorbereiten',
    idle: 'Es läuft kein Training. Starte eines am Laptop.',
    atLaptop: (step) => `Am Laptop: ${step}`,
    afterwards: 'Das Training ist vorbei. Am Laptop geht es weiter.',
    stop: 'Stopp',
    stopped: 'Hör für heute auf. Lies die Warnung.',
    paused: 'Nichts wird gezählt. Am Laptop geht es weiter.',
    refused: 'Kalibrierung fehlgeschlagen. Der Grund steht unten. Beginne am Laptop noch einmal.',
    acknowledge: 'Bestätige sie am Laptop.',
    sourceFailed: 'Die Sensoren senden nicht mehr. Sieh am Laptop nach.',
    awake:
      'Dieser Browser kann den Bildschirm nicht anlassen. Stell am Gerät eine lange Zeit bis zur Bildschirmsperre ein.',
    look: 'Design',
  },
};
