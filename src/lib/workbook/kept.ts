/** Keeps what a function gives for an object as long as that object lives. */
export function kept<K extends object, V>(make: (key: K) => V): (key: K) => V {
	const known = new WeakMap<K, { readonly made: V }>();
	return (key) => {
		const found = known.get(key);
		if (found) return found.made;
		const made = make(key);
		known.set(key, { made });
		return made;
	};
}
