package plyscape.layup;

/** What happens to the top ply: left uncut, or cut to its own target depth. */
public enum Top {
  LEAVE,
  MID
}
