package plyscape.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SlugTest {

  @Test
  void names_becomeSafeParts() {
    assertEquals("end-mill-1-5", Slug.of("End mill 1.5"));
    assertEquals("tiefblau-grun", Slug.of("Tiefblau/grün"));
    assertEquals("unnamed", Slug.of("../.."));
    assertEquals("unnamed", Slug.of("雪"));
    assertEquals(40, Slug.of("a".repeat(90)).length());
  }
}
