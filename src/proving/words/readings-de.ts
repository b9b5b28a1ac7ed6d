// What is odd in a file of readings and what a diagnosis sees in it, in German, by code; blanks as in husbandry/words/rules-de.ts.

export const germanReadingSayings: Readonly<Record<string, string>> = {
  'log.impossible':
    '„{0}“: {1} Werte können nicht sein (außerhalb {2} bis {3} {4}, oder ein Fehlercode); sie zählen nicht.',
  'log.gap': '{0} h lang kein Wert.',
  'log.still': '„{0}“ ändert sich nie: Ein Fühler in einem geheizten Terrarium bewegt sich immer ein wenig.',
  'log.frozen': '„{0}“ steht {2} h lang still auf {1}, während sich ein anderer Fühler bewegt.',
  'log.none': '„{0}“ hat an {1} von {2} Zeiten keinen Wert.',
  'log.fahrenheit': '„{0}“ steht auf {1}: Das sieht nach °F aus.',
  'log.notCelsius': '„{0}“ steht auf {1}: Das sieht nach °F aus, obwohl die Datei °C sagt.',
  'log.swapped': 'In {0} % der Werte ist das kühle Ende wärmer als das warme.',
  'logTimes.reset':
    'Die Uhr des Loggers wurde zurückgesetzt: {0} Zeilen tragen ein Datum vor 2010 und wurden beiseitegelegt.',
  'logTimes.reversed': 'Die Datei läuft vom neuesten Wert zum ältesten; sie wurde umgedreht.',
  'logTimes.hourTwice':
    'Eine Stunde kommt zweimal vor: Die Uhr wurde zurückgestellt. Beide Durchgänge zählen; Werte derselben Zeit werden gemittelt.',
  'logTimes.timesTwice': 'Manche Zeiten kommen doppelt oder nicht der Reihe nach; sie wurden geordnet.',
  'logTimes.clockBack':
    'Die Uhr springt in der Datei um {0} h zurück; {1} Zeilen der kürzeren Seite wurden beiseitegelegt.',
  'logFile.ownClock': 'die Uhr der Datei',
  'logFile.fileClock': '{0} in der Datei',
  'logFile.shownAs': '{0} in der Datei, gezeigt als {1}',
  'logFile.summaries':
    '{0} Zeilen sind Zusammenfassungen (Höchst-, Tiefst-, Mittelwert), keine Werte; sie wurden beiseitegelegt.',
  'logFile.missing': 'Die Zählung der Datei springt: {0} Zeilen fehlen.',
  'seen.falls': 'Fällt um {0} K und kommt nicht zurück.',
  'seen.rises': 'Steigt um {0} K und bleibt.',
  'seen.bump': 'Ein Buckel von {0} K um die Mittagszeit.',
  'seen.wet': 'Steht {0} h lang am oberen Ende der Skala.',
  'seen.late': 'Die warme Zeit des Tages kommt {0} h zu spät.',
  'seen.early': 'Die warme Zeit des Tages kommt {0} h zu früh.',
  'seen.state.no-thermostat': 'Steht bei Tag und bei Nacht dort, wo volle Leistung es hielte.',
  'seen.state.stuck-off': 'Steht auf Raumtemperatur: keine Wärme.',
  'seen.state.probe-cool-end': 'Das kühle Ende steht auf dem Sollwert, das warme weit darüber.',
  'seen.state.dial-set-to-basking': 'Am Tag steht alles höher, als der geplante Regler es hielte.',
  'seen.state.deep-substrate': 'Die Oberfläche bleibt kühl, obwohl die Matte arbeitet.',
};
