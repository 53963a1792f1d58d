/** Every hole a bit makes in a blank, with the collar's setting where a guide leads the bit. */
import { tipDepthMm } from '../blank/hole.js';
import { type Boring, ballastBorings, leanDeg } from '../jig/drill-stop/boring.js';
import { type DrillGuide, isDrillStop } from '../jig/drill-stop/jig.js';
import { eyeBoring } from '../jig/drill-stop/pilots.js';
import { eyePlaces } from '../mass/eyes.js';
import type { Drilling } from './shop.js';
import type { ShopLine, ShopWork } from './work.js';

const FROM = { ballast: 'belly', hanger: 'belly', 'tow eye': 'nose', 'tail eye': 'tail' } as const;
const ORDER = ['ballast', 'hanger', 'tow eye', 'tail eye'] as const;

/** An eye whose guide the jig leaves out is drilled all the same, without a collar's setting. */
export function drillingOf(line: ShopLine, { materials }: Pick<ShopWork, 'materials'>): Drilling[] {
  const { pattern, body, blank, jigs } = line;
  const guides = jigs.flatMap(({ jig }) => (isDrillStop(jig) ? jig.guides : []));
  const work = { pattern, body, blank, materials };
  const eyes = eyePlaces(pattern, body.shape).flatMap((place) => {
    // How deep a wire's bore is begun is the jig's choice: without one it is drilled right through.
    const boring = eyeBoring(place, work, { wireStartMm: 0 });
    const through = place.eye.kind === 'wire' && boring?.for !== 'hanger';
    return boring ? [{ boring, through }] : [];
  });
  const all = [
    ...ballastBorings(blank.holes).map((boring) => ({ boring, through: false })),
    ...eyes,
  ];
  return ORDER.flatMap((what) =>
    all
      .filter(({ boring }) => boring.for === what)
      .map(({ boring, through }, i): Drilling => {
        const guide = guides.find((g) => leads(g, boring));
        const own = through ? null : { depthMm: boring.depthMm, tipDepthMm: tipDepthMm(boring) };
        return {
          what,
          number: i + 1,
          bitMm: boring.diameterMm,
          stationMm: boring.mouth[0],
          heightMm: boring.mouth[1],
          tiltDeg: leanDeg(boring),
          depthMm: own?.depthMm ?? guide?.depthMm ?? null,
          tipDepthMm: own?.tipDepthMm ?? guide?.tipDepthMm ?? null,
          collarMm: guide?.collarSettingMm ?? null,
          collarFromTipMm: guide?.collarFromTipMm ?? null,
          from: FROM[what],
          through,
        };
      }),
  );
}

const SAME_MM = 1e-6; // the guide is made from the same boring

const leads = (guide: DrillGuide, { for: what, mouth }: Boring): boolean =>
  guide.for === what &&
  Math.abs(guide.stationMm - mouth[0]) <= SAME_MM &&
  Math.abs(guide.heightMm - mouth[1]) <= SAME_MM;
