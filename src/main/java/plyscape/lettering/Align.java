package plyscape.lettering;

/** Which end of a line of text stands at its place. */
public enum Align {
  LEFT,
  CENTRE,
  RIGHT
}
