/** What is known of printed gauges beyond what every jig tells. */
import type { ProfileGauge, Stretch } from '../../gauge/profile.js';
import type { SectionGauge } from '../../gauge/section.js';
import type { Jig } from '../jig.js';

export type SectionGaugeJig = Jig &
  Pick<
    SectionGauge,
    'number' | 'stationMm' | 'reason' | 'halfBreadthMm' | 'backMm' | 'bellyMm' | 'lies'
  > & {
    readonly kind: 'section-gauge';
    /** How much fuller than at its station the body gets within the gauging edge: so far the plate stands off there. */
    readonly fullerMm: number;
  };

export type ProfileGaugeJig = Jig &
  Pick<ProfileGauge, 'side' | 'interruptedMm'> &
  Stretch & {
    readonly kind: 'profile-gauge';
    /** Of its ticks. */
    readonly stationsMm: readonly number[];
  };

export type GaugeJig = SectionGaugeJig | ProfileGaugeJig;
