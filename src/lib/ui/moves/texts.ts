/** What the line of moves says. */
import { inLanguage } from '../language';

const en = {
	whatTheLastEditMoves: 'What the last edit moves',
	edits: (last: string, before: number) =>
		before === 0 ? last : `${last}, and ${before === 1 ? 'the edit' : `${before} edits`} before it`,
	plansFollow: (edit: string) => `${edit}: the plan follows …`,
	moves: (edit: string, moves: readonly string[], more: number) =>
		`${edit}: moves ${moves.join('; ')}${more > 0 ? `; and ${more} more` : ''}`,
	noPlan: 'no plan',
	movesNone: (edit: string) => `${edit}: moves none of the headline results`
};

export const texts = inLanguage({ en });
