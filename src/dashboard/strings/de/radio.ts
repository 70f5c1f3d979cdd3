import type {
  DeskTextKey,
  KindTextKey,
  LinkTextKey,
  MendKey,
  ProblemKey,
} from '../../../streaming/contract.ts';

/** What is missing where no sensor can be reached at all. */
export const PROBLEMS: Readonly<Record<ProblemKey, string>> = {
  'noble-missing': 'Der freiwillige Bluetooth-Teil (@abandonware/noble) ist nicht installiert.',
  'native-missing':
    'Der Bluetooth-Teil ist installiert, aber sein nativer Code wurde nicht gebaut.',
  'no-bluetooth': 'Dieses System hat keine Bluetooth-Unterstützung (sie fehlt im Kernel).',
  'no-adapter': 'Es wurde kein Bluetooth-Adapter gefunden.',
  'no-permission': 'Stillcatch darf Bluetooth nicht benutzen.',
  'not-low-energy': 'Der Bluetooth-Adapter kann kein Bluetooth Low Energy.',
  'adapter-off': 'Bluetooth ist ausgeschaltet.',
  'no-answer': 'Der Bluetooth-Adapter antwortet nicht.',
  'in-use': 'Ein anderes Stillcatch auf diesem Computer benutzt gerade die Bluetooth-Sensoren.',
  crashed: 'Der Bluetooth-Teil wurde unerwartet beendet und startet neu.',
};

/** What to do about it; a sentence that ends in a colon has a command after it. */
export const MENDS: Readonly<Record<MendKey, string>> = {
  install: 'Installiere ihn mit:',
  'compiler-linux': 'Installiere einen C++-Compiler, make und Python 3. Unter Debian oder Ubuntu:',
  'compiler-darwin': 'Installiere die Befehlszeilenwerkzeuge:',
  'compiler-win32':
    'Installiere die Visual Studio Build Tools mit dem C++-Paket, und dazu Python 3.',
  compiler: 'Installiere einen C++-Compiler und Python 3.',
  build: 'Baue ihn dann mit:',
  kernel: 'Lade die Bluetooth-Unterstützung des Kernels mit:',
  'kernel-elsewhere':
    'In einem Container, in WSL oder in einer virtuellen Maschine fehlt Bluetooth vielleicht. Starte Stillcatch direkt auf dem Computer.',
  adapter:
    'Steck einen Bluetooth-Adapter ein (4.0 oder neuer) oder nimm einen Computer, der einen eingebaut hat.',
  'passed-through': 'In einer virtuellen Maschine muss der Adapter durchgereicht werden.',
  'passed-through-linux':
    'In einer virtuellen Maschine oder einem Container muss der Adapter durchgereicht werden. Die Adapter zeigt:',
  'looks-again': 'Stillcatch prüft alle 10 Sekunden neu.',
  'start-again': 'Starte danach Stillcatch neu.',
  'allow-darwin':
    'Öffne Systemeinstellungen, Datenschutz & Sicherheit, Bluetooth, und erlaube es dem Terminalprogramm, aus dem du Stillcatch startest.',
  'allow-linux': 'Erlaube Node, Bluetooth ohne Root-Rechte zu benutzen:',
  'allow-win32':
    'Öffne Einstellungen, Datenschutz & Sicherheit, Funktechnik, und erlaube Desktop-Apps den Zugriff.',
  'on-darwin': 'Schalte Bluetooth in der Menüleiste oder in den Systemeinstellungen ein.',
  'on-linux': 'Schalte Bluetooth in den Einstellungen des Desktops ein, oder mit:',
  'on-win32': 'Schalte Bluetooth unter Einstellungen, Bluetooth und Geräte, ein.',
  'off-and-on': 'Schalte Bluetooth aus und wieder ein, oder zieh den Adapter ab und steck ihn neu.',
  'close-others': 'Schließe andere Programme, die Bluetooth-Sensoren benutzen.',
  'close-other': 'Schließe das andere, oder benutze die Sensoren dort.',
  doctor: 'Wenn das so bleibt, schalte Bluetooth aus und ein, und prüfe diesen Computer mit:',
};

/** Why a sensor is not connected, or not any more. */
export const LINKS: Readonly<Record<LinkTextKey, string>> = {
  'connect-timeout':
    'Keine Antwort in 10 s. Ist er eingeschaltet, in der Nähe und nirgends sonst verbunden?',
  'connect-refused': 'Der Bluetooth-Adapter ist beschäftigt und hat die Verbindung abgelehnt.',
  'not-seen': 'Nicht gefunden. Ist er eingeschaltet, geladen und höchstens ein paar Meter weg?',
  'services-missing': 'Er bietet nicht die Dienste, die dieser Sensortyp braucht.',
  'prepare-timeout': 'Er antwortet beim Einrichten nicht mehr.',
  'prepare-failed': 'Einrichten fehlgeschlagen.',
  disconnected: 'Verbindung verloren.',
  silent: 'Verbunden, aber seit 2 s keine Daten.',
  'adapter-off': 'Bluetooth wurde ausgeschaltet.',
  cancelled: 'Abgebrochen.',
  unassigned: 'Für diese Stelle ist noch kein Sensor gewählt. Öffne die Seite „Sensoren“.',
  waits:
    'Gefunden, aber nicht verbunden: Es können nur {most} gleichzeitig verbunden sein. Wähle ihn hier, um ihn zu verbinden.',
};

/** What the sensors page is told when it asks for something. */
export const DESK: Readonly<Record<DeskTextKey, string>> = {
  'unknown-command': 'Die Sensorseite hat eine unbekannte Anfrage gesendet.',
  'not-kept':
    'Deine Wahl geht verloren, wenn Stillcatch endet: Die Datei {file} lässt sich nicht schreiben.',
  gone: 'Dieser Sensor ist nicht mehr verfügbar.',
  'both-first': 'Erst müssen beide Sensoren verbunden sein.',
  'too-few-taps':
    'Beide Sensoren haben weniger als drei Klopfer gespürt. Halt sie zusammen und klopf kräftiger.',
  unlike: 'Die beiden Sensoren haben verschiedene Bewegungen gespürt. Halt sie fest zusammen.',
  'too-short': 'Einer der Sensoren hat nichts gesendet.',
};

export const KINDS: Readonly<Record<KindTextKey, string>> = {
  openProfile: 'Sensor mit offenem Profil',
};
