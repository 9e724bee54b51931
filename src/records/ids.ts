/** Somebody who types: "discord:<id>" or "console:<name>". */
export type MemberId = string & { readonly brand: "member" };

/** A club: a chat server, or the terminal's own. */
export type ClubId = string & { readonly brand: "club" };
