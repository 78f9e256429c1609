/** Which members a title speaks of: by words that no sibling's label has, or by its whole label. */

interface Named {
	readonly id: string;
	readonly label?: string | undefined;
}

/** Shorter ones are no names of things: "to", "of", "and" says nothing either. */
const SHORTEST = 4;

const wordsOf = (text: string): Set<string> =>
	new Set(
		(text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).filter((word) => word.length >= SHORTEST)
	);

export function namedMembers(members: readonly Named[], title: string): Set<string> {
	const said = wordsOf(title);
	const words = members.map(({ id, label }) => wordsOf(label ?? id));
	const ownWords = words.map(
		(own, i) =>
			new Set([...own].filter((word) => !words.some((other, j) => j !== i && other.has(word))))
	);
	const isByOwn = ownWords.map((own) => [...own].some((word) => said.has(word)));
	const isNamed = words.map(
		(own, i) =>
			isByOwn[i] ||
			// Of "Weekend crews" and "Weekend crews, July", a title with July means the longer one alone.
			(ownWords[i]!.size === 0 &&
				own.size > 0 &&
				[...own].every((word) => said.has(word)) &&
				!words.some((other, j) => isByOwn[j] && [...own].every((word) => other.has(word))))
	);
	return new Set(members.flatMap(({ id }, i) => (isNamed[i] ? [id] : [])));
}
