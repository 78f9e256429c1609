/** What people may do with a shared workbook: told once, for the server that decides and the page that shows it. */

/** Most first: each may do what those after it may. An `open_viewer` sees open results alone. */
export const ROLES = ['owner', 'editor', 'viewer', 'open_viewer'] as const;
export type Role = (typeof ROLES)[number];

/** Whether a role includes what another may do. */
export const includes = (role: Role, needed: Role): boolean =>
	ROLES.indexOf(role) <= ROLES.indexOf(needed);

/** What an API token lets a program do: read, or read and save. */
export const TOKEN_SCOPES = ['read', 'write'] as const;
export type TokenScope = (typeof TOKEN_SCOPES)[number];

/** Who may change the workbook: a new role may not, unless it stands here. */
const EDITORS: readonly Role[] = ['owner', 'editor'];

/** Null: where there are no accounts, everybody who is here may. */
export const mayEdit = (role: Role | null): boolean => role === null || EDITORS.includes(role);
