// Die Warnhinweise der Mappe auf Deutsch, nach der Kennung in data/cautions.json; dort steht der englische Wortlaut.
export const cautionsDe: Readonly<Record<string, string>> = {
  rcd: 'Heizungen über einen Fehlerstromschutz von 30 mA anschließen und ihn jeden Monat prüfen.',
  'drip-loop':
    'Jedes Kabel in einer Schlaufe unter seine Steckdose hängen lassen, damit Wasser abtropft; Steckdosen höher als die Wasserschale.',
  'no-chained-blocks': 'Eine Verlängerung, keine zweite darin; ihre Belastung einhalten.',
  'fixed-mount': 'Lampen und Strahler am Terrarium festschrauben; Klemmen rutschen.',
  'clear-of-burnables':
    'Brennbares von Heißem fernhalten. Eine Feuerwehr verlangt im Raum etwa 0,9 m; im Terrarium geht das nicht, also nach dem Hersteller richten und ein Gitter davor.',
  'smoke-alarm': 'Ein Rauchmelder im Raum oder daneben, der geht.',
  'contact-burn':
    'Was zu heiß zum Anfassen ist, ist viel zu heiß für ein Tier, das stundenlang darauf liegt. Menschenhaut verbrennt binnen 8 Stunden ab 43 °C; für Reptilienhaut wurde kein Wert gefunden, darum bleiben wir bei 35 °C und warnen ab 38 °C.',
  'salmonella-all':
    'Davon ausgehen, dass jedes Reptil Salmonellen trägt. Nach Tier, Terrarium, Wasser und Futter Hände mit Seife waschen.',
  'salmonella-ages':
    'Nicht zu empfehlen in einem Haushalt mit einem Kind unter 5; Menschen über 65 und mit schwacher Abwehr sollten ein anderes Tier erwägen.',
  'salmonella-infant':
    'Wo ein Kind unter 1 Jahr oder ein Mensch mit schwacher Abwehr lebt, sollten keine Reptilien gehalten werden; vor einer Geburt ein anderes Heim suchen.',
  'salmonella-pregnancy': 'Schwangere sollten Reptilien nicht anfassen; Arztpraxis oder Hebamme fragen.',
  'salmonella-kitchen':
    'Tier, Terrarium und Wasser nicht in die Küche; sein Wasser in die Toilette; seine Sachen nie in der Spüle waschen; Kinder beaufsichtigen.',
  'feeder-hygiene': 'Gefrorene Nager tragen sie auch: fern von Lebensmitteln auftauen und danach waschen.',
  bite: 'Einen Biss mit Wasser und Seife waschen. In die Arztpraxis, wenn er tief ist, nicht aufhört zu bluten, schwillt oder rot wird.',
  'bite-hognose':
    'Hakennasen- und Strumpfbandnattern haben ein mildes Gift: in die Arztpraxis, wenn ein Biss schwillt.',
  'large-constrictor':
    'Eine Würgeschlange über etwa 1,5 m zu zweit anfassen, beide erwachsen; ein tierärztliches Blatt verlangt eine Person je 1,5 m.',
  escape: 'Terrarium verriegeln, Spalten kennen, eine große Schlange, die nicht zu finden ist, melden.',
  'vet-before': 'Eine Tierarztpraxis, die sich mit Reptilien auskennt, suchen, bevor das Tier einzieht.',
  'help-order':
    'Wenn etwas nicht stimmt: erst das Heim ansehen, dann einfache Pflege von außen, dann der Tierarzt. Mit allem von der dringenden Liste sofort hin.',
  'vet-now':
    'Sofort zum Tierarzt: Atmen mit offenem Maul, Blasen an Maul oder Nase, Krämpfe, kann sich nicht umdrehen, Blutung, etwas hängt aus der Kloake, große Verbrennung, rote Punkte am Bauch.',
  'power-cut':
    'Bei Stromausfall das Terrarium in Decken hüllen, Luftlöcher frei, keine offene Flamme, keine heißen Steine.',
  'heat-wave':
    'Keine Heizung kann kühlen. In einer Hitzewelle das Terrarium in den kühlsten Raum, Tagwärme aus, Scheibe beschatten; kein Eis, kein Zug auf das Tier.',
};
