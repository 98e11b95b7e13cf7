import type { TableName } from '../../record/field.js';

/** What forms in French commonly call the fields; common practice, no source. Accents are left off before they are compared. */
export const frenchFields: Readonly<Partial<Record<TableName, Readonly<Record<string, string>>>>> = {
  stations: { station: 'poste, code', name: 'nom', setting: 'emplacement', waterbody: "plan d'eau" },
  station_days: {
    station: 'poste',
    date: 'jour',
    state: 'etat',
    opened_at: 'ouverture, ouvert',
    closed_at: 'fermeture, ferme',
    staff_hours: 'heures, heures travaillees',
    staff_cost: 'cout, salaires, cout du personnel',
  },
  waterbodies: { waterbody: "plan d'eau, code", name: 'nom, lac', status: 'statut', status_from: 'depuis' },
  inspections: {
    inspection: 'fiche, no fiche, no de fiche, numero, no inspection',
    station: 'poste, site',
    started_at: 'heure, debut, heure de debut, arrivee',
    finished_at: 'fin, heure de fin, depart',
    direction: 'sens',
    watercraft_type: "embarcation, type d'embarcation, bateau, type de bateau",
    length_ft: 'longueur',
    home_region: 'province, etat',
    last_waterbody: "dernier plan d'eau, dernier lac, provenance",
    last_on_water: 'derniere sortie, derniere mise a l’eau, dernier usage',
    next_waterbody: "prochain plan d'eau, prochain lac",
    standing_water: 'eau stagnante',
    vegetation: 'plantes',
    risk: 'risque, niveau de risque',
    outcome: 'resultat, issue, decision',
    inspector: 'inspecteur, inspectrice, agent, inspecte par',
  },
  decontaminations: {
    wash: 'lavage, no lavage, lavage no, numero de lavage',
    inspection: 'fiche, no fiche, no inspection',
    ordered_at: 'ordonne, demande',
    started_at: 'debut, debut du lavage',
    finished_at: 'fin, fin du lavage',
    released_at: 'libere, liberation, sortie',
    contact_temp_f: 'temperature, temperature de contact',
  },
  spending: { entry: 'piece, no piece', fiscal_year: 'exercice', category: 'poste, compte', amount: 'montant' },
};

/** What checklists in French commonly call the parts; common practice, no source. */
export const frenchParts: Readonly<Record<string, string>> = {
  'hull below waterline': 'coque',
  transom: 'tableau arriere, tableau',
  'outdrive lower unit': 'embase',
  'outboard lower unit': 'moteur hors bord',
  propeller: 'helice',
  bilge: 'cale, fond de cale',
  'live well': 'vivier',
  'ballast tank': 'ballast, ballasts',
  anchor: 'ancre',
  'mooring lines': 'amarres',
  'life jackets': 'gilets',
  bunks: 'remorque, patins',
  rollers: 'rouleaux',
  rudder: 'gouvernail, safran',
};

/** What forms in French commonly write for codes, by code list and code; common practice, no source. */
export const frenchCodes: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'yes or no': { yes: 'oui, o', no: 'non' },
  'day state': { open: 'ouvert', closed: 'fermé' },
  direction: { arriving: 'arrivée, entrée', leaving: 'départ, sortie' },
  'watercraft type': {
    'open motorboat': 'bateau ouvert',
    'cabin motorboat': 'bateau à cabine',
    'pontoon boat': 'ponton',
    'personal watercraft': 'motomarine',
    paddlecraft: 'canot, kayak, canot/kayak',
    'sail only': 'voilier',
    rowboat: 'chaloupe à rames',
  },
  outcome: {
    cleared: 'rien à signaler, ras',
    'cleaned on site': 'nettoyé, nettoyé sur place',
    'washed as a precaution': 'lavage préventif, lavé',
    intercepted: 'moules, moules trouvées',
    refused: 'refusé',
  },
  side: { port: 'bâbord, b', starboard: 'tribord, t' },
  'check state': { absent: 's.o., so', clean: 'ras, propre', 'not checked': 'non vérifié' },
  finding: { mussels: 'moules, moule', vegetation: 'végétation, plantes', mud: 'boue', 'standing water': 'eau' },
};
