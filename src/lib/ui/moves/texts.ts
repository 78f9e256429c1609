/** What the line of moves says. */
import { inLanguage } from '../language';

const en = {
	whatTheLastEditMoves: 'What the last edit moves',
	plansFollow: (edit: string) => `${edit}: the plan follows …`,
	moves: (edit: string, moves: readonly string[], more: number) =>
		`${edit}: moves ${moves.join('; ')}${more > 0 ? `; and ${more} more` : ''}`,
	movesNone: (edit: string) => `${edit}: moves none of the headline results`
};

export const texts = inLanguage({ en });
