/**
 * Labels on one line, each as near to its place as the others allow, in their order, none over another.
 */
export interface Wanted {
	/** Where its middle would best be. */
	readonly at: number;
	readonly width: number;
}

interface Group {
	/** Best start of the first label, as a mean over the group. */
	start: number;
	readonly members: Wanted[];
	length: number;
}

const startOf = (members: readonly Wanted[], gap: number) => {
	let offset = 0;
	let sum = 0;
	for (const member of members) {
		sum += member.at - member.width / 2 - offset;
		offset += member.width + gap;
	}
	return sum / members.length;
};

/** The middles of the labels between `from` and `to`. Groups that touch are joined until none do. */
export function spread(wanted: readonly Wanted[], from: number, to: number, gap: number): number[] {
	const groups: Group[] = [];
	for (const one of wanted) {
		let members: Wanted[] = [one];
		for (;;) {
			const length = members.reduce((sum, each) => sum + each.width + gap, -gap);
			const start = Math.max(from, Math.min(startOf(members, gap), to - length));
			const before = groups.at(-1);
			if (!before || before.start + before.length + gap <= start) {
				groups.push({ start, members, length });
				break;
			}
			groups.pop();
			members = [...before.members, ...members];
		}
	}
	const middles: number[] = [];
	for (const group of groups) {
		let at = group.start;
		for (const member of group.members) {
			middles.push(at + member.width / 2);
			at += member.width + gap;
		}
	}
	return middles;
}
