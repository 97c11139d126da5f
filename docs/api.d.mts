export const rooms: string[];
export function apiPage(room: string): string;
export function pagePath(room: string): string;
