import type { CalibrationTextKey, CalibrationWord } from '../../../body/calibrationTexts.ts';
import type { CueKey } from '../../../coaching/cues.ts';
import type { FieldTextKey } from '../../../coaching/jsonReader.ts';
import type { RefusalKey } from '../../../streaming/contract.ts';

/** At most six words each, as a coach calls them across the room. */
export const CUES: Readonly<Record<CueKey, string>> = {
  'hold-longer': 'Halte oben länger.',
  'hold-shorter': 'Lass etwas früher los.',
  'chest-first': 'Lass die Brust zuerst starten.',
  'chest-first:together': 'Gleichzeitig. Lass die Brust zuerst starten.',
  'chest-first:wait': 'Lass die Arme länger warten.',
  'arms-sooner': 'Lass die Arme früher folgen.',
  'keep-lean': 'Bleib beim Drehen vorgebeugt.',
  'bend-less': 'Beug dich etwas weniger vor.',
  'bend-down': 'Beug die Brust mehr nach unten.',
  'keep-arm-out': 'Lass den Arm nach außen gedreht.',
  'arm-out-less': 'Dreh den Arm weniger nach außen.',
  'turn-through': 'Dreh die Brust weiter durch.',
  'turn-less': 'Dreh die Brust etwas weniger.',
  'catch-later': 'Lass den Schläger länger fallen.',
  'catch-sooner': 'Fang den Schläger früher.',
  'missed-catch': 'Verfehlt. Lass ihn kürzer fallen.',
  'stay-easy': 'Ganz ruhig. Bleib im angenehmen Bereich.',
  good: 'Gut, genau so.',
  'good:right': 'Das war richtig.',
  'good:it': 'Ja, genau das ist es.',
  'good:keep': 'Gut. Behalte das bei.',
  'not-scored:gap': 'Nicht gewertet: Signal verloren.',
  'not-scored:range': 'Nicht gewertet: Sensor über seinem Bereich.',
  'not-scored:targets': 'Nicht gewertet: Plan ohne Vorgaben.',
  'not-scored:holdS': 'Nicht gewertet: Halten nicht erkannt.',
  'not-scored:chestLeadMs': 'Nicht gewertet: Armstart nicht erkannt.',
  'not-scored:leanChangeDeg': 'Nicht gewertet: Neigung nicht erkannt.',
  'not-scored:addedFlexionDeg': 'Nicht gewertet: Beugung nicht erkannt.',
  'not-scored:keptRotationDeg': 'Nicht gewertet: Armdrehung nicht erkannt.',
  'not-scored:turnTowardTargetDeg': 'Nicht gewertet: Drehung nicht erkannt.',
  'not-scored:releaseToCatchMs': 'Nicht gewertet: Fangen nicht erkannt.',
};

export const CALIBRATION: Readonly<Record<CalibrationTextKey, string>> = {
  'missing-step':
    'Der Kalibrierschritt „{step}“ ({code}) fehlt: Mach die Kalibrierung noch einmal von vorn.',
  gap: 'Der {sensor} hat nichts gesendet, während du still gestanden hast: Prüfe seine Verbindung, dann stell dich noch einmal hin.',
  'moving-while-still':
    'Der {sensor} hat sich bewegt, während du still stehen solltest: Steh ruhig, lass die Arme hängen und mach es noch einmal.',
  'gravity-norm':
    'Der {sensor} misst in Ruhe {norm} m/s² statt 9,81: Prüfe seine Einheiten und seinen Messbereich.',
  'upside-down':
    'Der {sensor} hat sich während der Kalibrierung auf den Kopf gedreht: Leg ihn an wie gezeichnet und beginne von vorn.',
  'stand-mismatch':
    'Der {sensor} ist zwischen dem ersten und dem zweiten Stillstehen um {deg} Grad gekippt: Zieh den Gurt fester und steh beide Male gleich.',
  'too-few-repetitions:small':
    'Der {sensor} hat sich bei den {moves} kaum gedreht: Wiederhole sie, langsam und deutlich größer.',
  'too-few-repetitions': 'Nur eine der {moves} wurde gesehen: Mach drei davon.',
  'gyro-sign':
    'Drehratensensor und Beschleunigungsmesser im {sensor} widersprechen sich: Eine Achse oder ein Vorzeichen ist falsch eingestellt.',
  'axis-unclear':
    'Die {moves} gingen in mehr als eine Richtung ({percent} % um eine Achse): Wiederhole sie gerade nach vorn, ohne dich zu drehen.',
  'axis-unclear:recheck':
    'Die {move} ging in mehr als eine Richtung: Wiederhole die Prüfung gerade nach vorn, ohne dich zu drehen.',
  'axis-spread':
    'Die {moves} unterschieden sich um {deg} Grad: Wiederhole sie alle in derselben Richtung.',
  'axis-not-square':
    'Die {moves} lagen {deg} Grad neben der Waagerechten: Stell dich erst aufrecht hin, dann beweg dich gerade nach vorn.',
  'swapped-sensors':
    'Die beiden Sensoren sind wohl vertauscht: Der Brustsensor ging mit dem Arm hoch. Tausche sie und beginne von vorn.',
  'nothing-kept':
    'Es gibt keine frühere Kalibrierung zum Vergleichen: Mach die ganze Kalibrierung.',
  'mounting-moved':
    'Der {sensor} ist um etwa {deg} Grad verrutscht (gekippt um {tilt}, um {part} verdreht um {twist}): Mach die ganze Kalibrierung.',
};

export const CALIBRATION_WORDS: Readonly<Record<CalibrationWord, string>> = {
  'chest sensor': 'Brustsensor',
  'trail arm sensor': 'Armsensor',
  bows: 'Verbeugungen',
  'arm raises': 'Armhebungen',
  bow: 'Verbeugung',
  'arm raise': 'Armhebung',
  chest: 'die Brust',
  arm: 'den Arm',
  'standing still': 'still stehen',
  'the three bows': 'die drei Verbeugungen',
  'the three arm raises': 'die drei Armhebungen',
  'the address': 'das Ansprechen',
};

export const REFUSALS: Readonly<Record<RefusalKey, string>> = {
  'safety-done': 'Die Sicherheitsfragen sind schon beantwortet.',
  'sensors-first': 'Erst müssen beide Sensoren in Ordnung sein; die Liste sagt, was fehlt.',
  'nothing-to-go-on': 'Von hier geht es nicht weiter.',
  'recheck-later': 'Die Nachprüfung kommt nach der Sensorprüfung.',
  'not-left-out': 'Dieser Schritt kann nicht ausgelassen werden.',
  'nothing-to-repeat': 'Hier gibt es nichts zu wiederholen.',
  'no-practice': 'Gerade läuft kein Training.',
  'is-over': 'Das Training ist vorbei: Was gespeichert ist, bleibt, wie es ist.',
  'no-repetition': 'In dieser Einheit gibt es keine Wiederholung {index}.',
  'nothing-to-undo': 'Es gibt keine Korrektur, die sich zurücknehmen lässt.',
  'warning-gone': 'Diese Warnung gilt nicht mehr.',
  'nothing-to-close': 'Es gibt keine Einheit abzuschließen.',
  'only-a-recording': 'Dieser Dienst spielt eine Aufnahme ab; er kann kein Training beginnen.',
  'hand-later':
    'Während ein Training läuft, bleibt die Seite, wie sie ist: Beende es erst oder beginne ein anderes.',
  'name-too-long': 'Ein Name hat höchstens 40 Zeichen.',
  'name-control': 'Ein Name enthält keine Steuerzeichen.',
  'nobody-kept': 'Dieser Dienst speichert nichts über dich.',
  'nothing-kept':
    'Für diese Seite gibt es keine frühere Kalibrierung: Mach die ganze Kalibrierung.',
  'other-kind':
    'Die frühere Kalibrierung war mit Sensoren anderer Art: Mach die ganze Kalibrierung.',
  'other-sensor':
    'Der Sensor für {sensor} ist nicht der der früheren Kalibrierung: Mach die ganze Kalibrierung.',
};

export const WORN_WORDS: Readonly<Record<string, string>> = {
  chest: 'die Brust',
  'trail arm': 'den hinteren Arm',
};

/** The field's label stands before it. */
export const FIELDS: Readonly<Record<FieldTextKey, string>> = {
  object: 'Hier fehlt eine Gruppe von Angaben.',
  unknown: 'Diese Angabe ist nicht bekannt.',
  number: 'Bitte eine Zahl von {low} bis {high}.',
  whole: 'Bitte eine ganze Zahl, nicht {found}.',
  text: 'Bitte einen Text.',
  longest: 'Bitte höchstens {most} Zeichen.',
  control: 'Bitte ohne Steuerzeichen.',
  'one-of': 'Bitte eine der Möglichkeiten.',
  list: 'Bitte eine Liste.',
  items: 'Bitte höchstens {most} Einträge.',
  schema: 'Diese Fassung kennt nur Pläne der Form 1.',
  'empty-band': 'Bitte mindestens ein Ende angeben.',
  'min-above-max': '„Mindestens“ ({min}) liegt über „höchstens“ ({max}).',
  'week-below-session': 'In der Woche nicht weniger als in einer Einheit ({perSession}).',
};
