import { expectRange } from '../expectRange.ts';
import { type Celsius, celsius, HOUR, type Hours, hours, type Instant, instant } from '../units.ts';
import type { WetState } from './walkWetness.ts';

/** A stretch of time during which leaves stayed wet, short dry breaks included. */
export type WetSpell = {
  readonly from: Instant;
  /** End of its last wet time known. */
  readonly to: Instant;
  /** Wet time only, without the dry breaks. */
  readonly wetHours: Hours;
  /** Time inside it that no reading speaks for. */
  readonly unknownHours: Hours;
  /** Over wet time only. */
  readonly meanTemperature: Celsius;
};

/**
 * Gathers pieces of time into wet spells. A spell ends when the dry time since it was last wet
 * adds up to `mergeGapHours`, or when one unknown stretch is as long; the fungus is taken to start
 * afresh then. There is no sharp truth in that length: lesions fall steadily as a dry break grows
 * from 0.3 to 24 h (Alderman, Lacy & Everts 1985, Phytopathology 75:808); 4 h is usual here.
 */
export class SpellBuilder {
  #from = 0;
  #to = 0;
  #wet = 0;
  #warmth = 0; // °C ms, over wet time
  #unknown = 0;
  #dryNow = 0; // since last wet; counts towards the end
  #unknownNow = 0; // since last wet; joins the spell if it turns wet again
  readonly #mergeGap: number;
  readonly #ended: (spell: WetSpell) => void;

  constructor(mergeGapHours: number, ended: (spell: WetSpell) => void) {
    expectRange('dry break that ends a spell', mergeGapHours, 0, 72, 'h');
    this.#mergeGap = mergeGapHours * HOUR;
    this.#ended = ended;
  }

  add(state: WetState, from: number, to: number, temperature: number) {
    const length = to - from;
    if (!(length > 0)) return;
    if (state === 'wet') {
      this.#addWet(from, to, temperature);
      return;
    }
    if (this.#wet === 0) return;
    if (state === 'dry') {
      this.#dryNow += length;
      if (this.#dryNow >= this.#mergeGap) this.end();
    } else {
      this.#unknownNow += length;
      if (length >= this.#mergeGap) this.end();
    }
  }

  #addWet(from: number, to: number, temperature: number) {
    if (this.#wet === 0) this.#from = from;
    this.#unknown += this.#unknownNow;
    this.#unknownNow = 0;
    this.#dryNow = 0;
    this.#wet += to - from;
    this.#warmth += temperature * (to - from);
    this.#to = to;
  }

  /** The spell that would go on if leaves were wet now; null when none would. */
  standing(): WetSpell | null {
    if (this.#wet === 0) return null;
    return {
      from: instant(this.#from),
      to: instant(this.#to),
      wetHours: hours(this.#wet / HOUR),
      unknownHours: hours(this.#unknown / HOUR),
      meanTemperature: celsius(this.#warmth / this.#wet),
    };
  }

  /** Closes the spell that stands, if one does. */
  end() {
    const spell = this.standing();
    this.#wet = 0;
    this.#warmth = 0;
    this.#unknown = 0;
    this.#dryNow = 0;
    this.#unknownNow = 0;
    if (spell !== null) this.#ended(spell);
  }
}
