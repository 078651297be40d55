import { type CardRefusal, type LobeCard, lobeFromCard } from '../../src/physics/valve/lobe-card.ts';
import type { Lobe } from '../../src/physics/valve/lobe.ts';

interface Card extends Omit<LobeCard, 'duration200'> {
  readonly duration200: number | null;
}
/** The lobe of a card, if there is one, and which of its figures do not go together, if any. */
export interface CardLobe {
  readonly lobe: Lobe | null;
  readonly refusal: CardRefusal | null;
}

/** A duration at 0.200 in that fits no smooth lobe is left out: the rest of the card still draws one. */
export function cardLobe({ duration200, ...card }: Card): CardLobe {
  const found = lobeFromCard(duration200 === null ? card : { ...card, duration200 });
  if (!('trouble' in found)) return { lobe: found, refusal: null };
  const rest = duration200 === null ? found : lobeFromCard(card);
  return { lobe: 'trouble' in rest ? null : rest, refusal: found };
}
