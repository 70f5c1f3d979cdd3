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
  'keep-lean': 'Bleib in der Körperhaltung.',
  'bend-less': 'Beug dich etwas weniger vor.',
  'bend-down': 'Beug die Brust mehr nach unten.',
  'keep-arm-out': 'Lass den Arm nach außen gedreht.',
  'arm-out-less': 'Dreh den Arm weniger nach außen.',
  'turn-through': 'Dreh die Brust weiter durch.',
  'turn-less': 'Dreh die Brust etwas weniger.',
  'catch-later': 'Lass den Schläger länger fallen.',
  'catch-sooner': 'Fang den Schläger früher.',
  'missed-catch': 'Verfehlt. Fang ihn früher.',
  'stay-easy': 'Mach langsam. Bleib im angenehmen Bereich.',
  good: 'Gut, genau so.',
  'good:right': 'Das war richtig.',
  'good:it': 'Ja, genau das ist es.',
  'good:keep': 'Gut. Mach so weiter.',
  'not-scored:gap': 'Nicht gewertet: Signal verloren.',
  'not-scored:range': 'Nicht gewertet: Messbereich überschritten.',
  'not-scored:targets': 'Nicht gewertet: Plan ohne Zielwerte.',
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
    'Der Kalibrierschritt „{step}“ ({code}) fehlt. Wiederhole die Kalibrierung von Anfang an.',
  gap: 'Der {sensor} hat nichts gesendet, während du still gestanden hast. Prüfe seine Verbindung und steh noch einmal still.',
  'moving-while-still':
    'Der {sensor} hat sich beim Stillstehen bewegt. Steh ruhig, lass die Arme hängen und wiederhole es.',
  'gravity-norm':
    'Der {sensor} misst in Ruhe {norm} m/s² statt 9,81. Prüfe seine Maßeinheit und seinen Messbereich.',
  'upside-down':
    'Der {sensor} hat sich während der Kalibrierung auf den Kopf gedreht. Leg ihn an wie gezeigt und beginne von vorn.',
  'stand-mismatch':
    'Der {sensor} ist zwischen dem ersten und dem zweiten Stillstehen um {deg} Grad gekippt. Zieh den Gurt fester und steh beide Male gleich.',
  'too-few-repetitions:small':
    'Der {sensor} hat sich beim {moves} kaum bewegt. Wiederhole es langsam und deutlich weiter.',
  'too-few-repetitions': 'Nur ein {moves} wurde erkannt. Mach es dreimal.',
  'gyro-sign':
    'Gyroskop und Beschleunigungssensor im {sensor} widersprechen sich. Eine Achse oder ein Vorzeichen ist falsch eingestellt.',
  'axis-unclear':
    'Das {moves} ging in mehr als eine Richtung ({percent} % um eine Achse). Wiederhole es gerade nach vorn, ohne dich zu drehen.',
  'axis-unclear:recheck':
    'Das {move} ging in mehr als eine Richtung. Wiederhole die Prüfung gerade nach vorn, ohne dich zu drehen.',
  'axis-spread':
    'Das {moves} unterschied sich um {deg} Grad. Wiederhole es dreimal in derselben Richtung.',
  'axis-not-square':
    'Das {moves} lag {deg} Grad neben der Waagerechten. Stell dich erst aufrecht hin, dann beweg dich gerade nach vorn.',
  'swapped-sensors':
    'Die beiden Sensoren sind wohl vertauscht: Der Brustsensor hat sich mit dem Arm bewegt. Tausche sie und beginne von vorn.',
  'nothing-kept':
    'Es gibt keine frühere Kalibrierung zum Vergleichen. Mach die volle Kalibrierung.',
  'mounting-moved':
    'Der {sensor} ist um etwa {deg} Grad verrutscht (gekippt um {tilt}, um {part} verdreht um {twist}). Mach die volle Kalibrierung.',
};

export const CALIBRATION_WORDS: Readonly<Record<CalibrationWord, string>> = {
  'chest sensor': 'Brustsensor',
  'trail arm sensor': 'Armsensor',
  bows: 'Vorbeugen',
  'arm raises': 'Armheben',
  bow: 'Vorbeugen',
  'arm raise': 'Armheben',
  chest: 'die Brust',
  arm: 'den Arm',
  'standing still': 'still stehen',
  'the three bows': 'dreimal vorbeugen',
  'the three arm raises': 'dreimal den Arm heben',
  'the address': 'das Ansprechen',
};

export const REFUSALS: Readonly<Record<RefusalKey, string>> = {
  'safety-done': 'Die Sicherheitsfragen sind schon beantwortet.',
  'sensors-first': 'Erst müssen beide Sensoren in Ordnung sein. Die Liste zeigt, was fehlt.',
  'nothing-to-go-on': 'Von hier geht es nicht weiter.',
  'recheck-later': 'Mach zuerst die Sensorprüfung.',
  'not-left-out': 'Diesen Schritt kannst du nicht überspringen.',
  'nothing-to-repeat': 'Hier gibt es nichts zu wiederholen.',
  'no-practice': 'Gerade läuft kein Training.',
  'is-over': 'Das Training ist vorbei und gespeichert. Hier lässt es sich nicht mehr ändern.',
  'no-repetition': 'In diesem Training gibt es keine Wiederholung {index}.',
  'nothing-to-undo': 'Es gibt keine Korrektur, die du rückgängig machen kannst.',
  'warning-gone': 'Diese Warnung ist schon geschlossen.',
  'nothing-to-close': 'Es gibt kein Training abzuschließen.',
  'only-a-recording': 'Stillcatch spielt eine Aufnahme ab. Hier kannst du kein Training beginnen.',
  'hand-later':
    'Während eines Trainings kannst du nicht zwischen rechts und links wechseln. Beende es zuerst.',
  'name-too-long': 'Name: höchstens 40 Zeichen.',
  'name-control': 'Name: keine Steuerzeichen.',
  'pain-first': 'Wähle erst eine Zahl für deinen Schmerz.',
  'no-stop': 'Es gibt keinen Hinweis zum Lesen.',
  'nobody-kept': 'Stillcatch speichert hier keine persönlichen Einstellungen.',
  'nothing-kept': 'Für diese Hand gibt es keine frühere Kalibrierung. Mach die volle Kalibrierung.',
  'other-kind':
    'Die frühere Kalibrierung war mit einem anderen Sensortyp. Mach die volle Kalibrierung.',
  'other-sensor':
    'Der Sensor für {sensor} ist nicht der aus der früheren Kalibrierung. Mach die volle Kalibrierung.',
};

export const WORN_WORDS: Readonly<Record<string, string>> = {
  chest: 'die Brust',
  'trail arm': 'den Arm',
};

/** The field's label stands before it. */
export const FIELDS: Readonly<Record<FieldTextKey, string>> = {
  object: 'nicht lesbar.',
  unknown: 'unbekanntes Feld.',
  number: 'eine Zahl von {low} bis {high} eingeben.',
  whole: 'eine ganze Zahl eingeben, nicht {found}.',
  text: 'Text eingeben.',
  longest: 'höchstens {most} Zeichen.',
  control: 'keine Steuerzeichen.',
  'one-of': 'eine der Möglichkeiten wählen.',
  list: 'eine Liste eingeben.',
  items: 'höchstens {most} Zeilen.',
  schema: 'Dieser Plan braucht eine andere Version von Stillcatch.',
  'empty-band': 'ein Minimum, ein Maximum oder beides eingeben.',
  'min-above-max': 'Das Minimum ({min}) liegt über dem Maximum ({max}).',
  'week-below-session': 'mindestens so viele wie in einem Training ({perSession}).',
};
