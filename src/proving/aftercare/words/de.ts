// The words of aftercare in German.
import type { AftercareWords } from './en.ts';

export const de: AftercareWords = {
  tasks: {
    'call-first': {
      title: 'Halter anrufen: die ersten Nächte',
      why: 'Tag {days} nach der Abgabe am {day}: Das Heim hatte seine ersten Nächte mit dem Tier.',
    },
    'call-week': {
      title: 'Halter anrufen: die erste Woche',
      why: 'Tag {days} nach der Abgabe am {day}: Messwerte, Wasser, Kot und Futter lassen sich jetzt erfragen.',
    },
    'call-meal': {
      title: 'Halter anrufen: nach der ersten Mahlzeit',
      why: '{days} Tage nach der ersten Mahlzeit zu Hause ({day}): Die Ruhe nach dem Fressen ist vorbei.',
    },
    weigh: {
      title: 'Wiegen',
      why: 'In diesem Alter alle {days} Tage; früher, solange es verweigert oder abnimmt.',
    },
    'prove-home': {
      title: 'Raum messen und das Heim neu nachweisen',
      why: 'Im Nachweis wurde der Raum nicht gemessen; über kältere Nächte und heißere Tage ist nichts bekannt.',
    },
    'prove-cold': {
      title: 'Heim vor der ersten kalten Nacht neu nachweisen',
      why: 'Gemessen wurden Nächte bis {roomC} °C im Raum; darunter gilt eine Vorhersage, und bei {endC} °C endet auch sie. Die Tage sind aus dem Lauf des Jahres geschätzt: auf das Thermometer im Raum achten.',
    },
    'prove-heat': {
      title: 'Heim vor dem ersten heißen Tag neu nachweisen',
      why: 'Gemessen wurden Tage bis {roomC} °C im Raum; darüber gilt eine Vorhersage, und bei {endC} °C endet auch sie. Die Tage sind aus dem Lauf des Jahres geschätzt: auf das Thermometer im Raum achten.',
    },
    'renew-heater': {
      title: 'Wärmequelle erneuern: {heater}',
      why: 'Eingebaut am {fitted}; sie brennt etwa {hoursPerDay} Stunden am Tag und hält meist {lifeH} Stunden oder länger.',
    },
    'renew-heater-assumed': {
      title: 'Wärmequelle erneuern: {heater}',
      why: 'Eingebaut am {fitted}; kein Plan ist aufbewahrt, darum gilt: Sie brennt {hoursPerDay} Stunden am Tag, mehr kann sie nicht. Sie hält meist {lifeH} Stunden oder länger.',
    },
    'check-instrument': {
      title: 'Messgerät prüfen: {name}',
      why: 'An schmelzendem Eis oder feuchtem Salz alle {days} Tage; ein nie geprüftes sofort.',
    },
    'move-up': {
      title: 'In ein längeres Terrarium umziehen',
      why: 'Nach seinem Wachstum überschreitet es in dieser Zeit {limitCm} cm; für mehr ist dieses Terrarium zu kurz.',
    },
  },
  keeper: {
    'call-first': 'Die ersten Nächte',
    'call-week': 'Die erste Woche',
    'call-meal': 'Nach der ersten Mahlzeit',
    weigh: 'Die Schlange wiegen',
  },
  ownThermometer: 'Thermometer {n} des Heims',
  earlierHeater: 'die bisherige',
  questions: {
    well: 'Geht es ihr gut?',
    ate: 'Hat sie gefressen?',
    readings: 'Was zeigen die Thermometer?',
    massG: 'Was wiegt sie?',
    droppings: 'Gab es Kot?',
    'day-of-readings': 'Sind Messwerte eines Tages und einer Nacht geschickt, auch die des Raumes?',
    fitted: 'An welchem Tag wurde die neue eingebaut?',
    checked: 'Was zeigte es in schmelzendem Eis?',
    box: 'Wie lang ist sie jetzt?',
  },
};
