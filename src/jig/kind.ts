/** A kind of jig as the rest of the program sees it: its set-up file, how it is made, how it is judged. */
import type { KeyPath } from '../problem.js';
import type { SolidKernel } from '../solid/kernel.js';
import type { JigCheck } from './flaw.js';
import type { Jig, JigOutcome, JigWork } from './jig.js';
import type { Printer } from './printer.js';
import type { JigForm, JigSetup } from './setup.js';

export type JigKind = JigForm & {
  /** The part of a pattern its problems are about, unless they say so themselves. */
  readonly path: KeyPath;
  /** A run can do without: one that was not asked for is left out with a warning where it can not be made. */
  readonly isAid: boolean;
  readonly make: (kernel: SolidKernel, work: JigWork, set: JigSet) => JigOutcome<Jig>;
  /** What this kind must hold beyond what every jig must, measured on the finished mesh. */
  readonly measure: (kernel: SolidKernel, jig: Jig, work: JigWork, set: JigSet) => JigCheck;
};

/** A jig's set-up and the printer it is made with. */
export type JigSet<S extends JigSetup = JigSetup> = {
  readonly setup: S;
  readonly printer: Printer;
};

type Form<S extends JigSetup, J extends Jig> = Omit<JigKind, 'make' | 'measure'> & {
  readonly make: (kernel: SolidKernel, work: JigWork, set: JigSet<S>) => JigOutcome<J>;
  readonly measure: (kernel: SolidKernel, jig: J, work: JigWork, set: JigSet<S>) => JigCheck;
};

/** A kind among kinds: set-ups are only ever handed to the kind whose form they were read with. */
export const jigKind = <S extends JigSetup, J extends Jig>(form: Form<S, J>): JigKind =>
  form as unknown as JigKind;
