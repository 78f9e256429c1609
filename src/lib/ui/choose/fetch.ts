/** The searched list is fetched ahead, after the first numbers: few lists are long, and the first screen has none. */
export const fetchCombobox = () => import('./Combobox.svelte');
