/** Why a picture was not taken, in words for the person who chose it. */
export class PhotoRefused extends Error {}
