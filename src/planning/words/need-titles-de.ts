// Deutsche Namen der Anforderungen, die die Fachräume auf Englisch benennen; Schlüssel ist der Anfang ihrer Kennung.
// Fehlt einer, steht der englische Name da. Gründe und Abhilfen sind noch englisch und als solche ausgezeichnet.

const names: Readonly<Record<string, string>> = {
  'basking-surface': 'Sonnenplatz am kältesten Tag',
  'night-warmth': 'Warmes Ende in der kältesten Nacht',
  'cool-end-winter': 'Kühles Ende am Wintertag',
  'cool-end-mid': 'Kühles Ende zwischen Winter und Sommer',
  'cool-end-summer': 'Kühles Ende am heißesten Tag',
  'hottest-reachable': 'Heißeste Fläche in Reichweite',
  'humidity-winter': 'Feuchte am kühlen Ende im Winter',
  'humidity-summer': 'Feuchte am kühlen Ende im Sommer',
  'dew-on-glass': 'Kein Beschlag in der Winternacht',
  'night-light': 'Kein Licht in der Nacht',
  thermostat: 'Ein Thermostat an jeder Heizung',
  'thermostat-kind': 'Ein Thermostat, der zur Heizung passt',
  guard: 'Nichts Heißes in Reichweite',
  holder: 'Eine Fassung, die die Hitze aushält',
  load: 'Last am Thermostat',
  'probe-place': 'Der Fühler am richtigen Platz',
  'probe-end': 'Der Fühler nicht am kühlen Ende',
  'thermometer-basking': 'Ein Thermometer am Sonnenplatz',
  'thermometer-warm-end': 'Ein Thermometer am warmen Ende',
  'thermometer-cool-end': 'Ein Thermometer am kühlen Ende',
  lock: 'Ein Schloss',
  gap: 'Kein Weg hinaus',
  'space-now': 'Platz für das Tier jetzt',
  'space-later': 'Platz, wenn es wächst',
  'two-hides': 'Ein Versteck an jedem Ende',
  'hide-fit': 'Verstecke, die passen',
  'bowl-cool-end': 'Wasser am kühlen Ende',
  'bowl-size': 'Eine Schale zum Baden',
  'lid-humidity': 'Ein Deckel, der die Feuchte hält',
  substrate: 'Ein passender Boden',
  'substrate-depth': 'Tief genug zum Graben',
  'mat-not-smothered': 'Keine dicke Schicht über der Heizmatte',
  'mat-alone': 'Eine Matte allein nur für kleine Schlanke',
  'starter-tub': 'Eine Aufzuchtbox nur, wo sie hingehört',
  'too-bare': 'Nicht zu groß und kahl für ein Junges',
  planted: 'Bepflanzte Becken sind für später',
};

/** The name for an id such as "guard-emitter": the longest known beginning; null when none is known. */
export function germanNeedName(id: string): string | null {
  for (let end = id.length; end > 0; end = id.lastIndexOf('-', end - 1)) {
    const name = names[id.slice(0, end)];
    if (name) return name;
  }
  return null;
}
