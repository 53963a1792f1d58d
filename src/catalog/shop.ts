/** What is done at the bench with brush and pot. */
import type { Entry } from './entry.js';

export const shopProblems = {
  'mix-unclear': {
    severity: 'error',
    what: '{key} does not say one ratio of the two parts.',
    limit: 'Both aByVolume and bByVolume, or both aByMass and bByMass, and not both ways.',
    from: 'the data sheet gives either; the densities turn one into the other',
    fix: 'Copy the two numbers from your data sheet, by volume or by mass.',
    about: 'The ratio of a two-part coat is given half, twice or not at all.',
  },
  'pot-life-short': {
    severity: 'error',
    what: 'One coat of {coat} takes {minutesPerLure} min a lure; a pot of it lasts {potLifeMin} min.',
    limit: 'A pot life as long as one lure takes, at least.',
    from: 'potLifeMin and minutesPerLure of the row {row}',
    fix: 'Give potLifeMin from your data sheet, or the minutes one lure really takes, under `materials:` in the run file.',
    about: 'A two-part coat sets before it is on one lure.',
  },
  'pot-too-small': {
    severity: 'error',
    what: 'One coat of {coat} on one {name} takes {mixG} g, waste included.',
    limit: 'At most {largestPotG} g in one pot.',
    from: 'largestPotG of the row {row}',
    fix: 'Give largestPotG from your data sheet under `materials:` in the run file, or put on more and thinner coats.',
    about: 'The largest pot of a two-part coat does not hold what one lure takes.',
  },
  'bench-day-short': {
    severity: 'error',
    what: 'A pot of {coat} for one lure takes {minutes} min, mixing included.',
    limit: 'At most {limitMin} min, one day at the bench.',
    from: 'shop.benchHoursPerDay; a pot does not wait over night',
    fix: 'Give longer bench days, or the minutes that mixing and one lure really take.',
    about: 'Not even the smallest pot of a two-part coat is done in one day at the bench.',
  },
} as const satisfies Record<string, Entry>;
