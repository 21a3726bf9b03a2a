package plyscape.lettering;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class StrokeAlphabetTest {

  /** Letters beyond ASCII of Europe's languages, from memory of their alphabets. */
  private static final Map<String, String> LANGUAGES =
      Map.ofEntries(
          Map.entry("German", "ÄÖÜäöüßẞ"),
          Map.entry("French", "ÀÂÆÇÉÈÊËÎÏÔŒÙÛÜŸàâæçéèêëîïôœùûüÿ«»"),
          Map.entry("Spanish, Portuguese", "ÁÉÍÓÚÜÑáéíóúüñÃÕãõ¿¡ªº"),
          Map.entry("Nordic, Icelandic", "ÅÄÖÆØÐÞÝåäöæøðþý"),
          Map.entry("Polish, Czech, Slovak", "ĄĆĘŁŃÓŚŹŻąćęłńóśźżČĎĚŇŘŠŤŮŽčďěňřšťůžĹĽŔĺľŕ"),
          Map.entry("Hungarian, Romanian, Turkish", "ŐŰőűĂÂÎȘȚăâîșțĞİŞğış"),
          Map.entry("Baltic", "ĀĒĢĪĶĻŅŪāēģīķļņūĖĮŲŪĄĘŠŽėįųąęšžÕõ"),
          Map.entry("Croatian, Maltese, Welsh, Sami", "ĐđŽžĆćĊĠĦŻċġħżŴŶŵŷŊŋŦŧ"),
          Map.entry("Greek", "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐΰΆΈ"),
          Map.entry(
              "Russian", "АБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдеёжзийклмнопрстуфхцчшщъыьэюя"),
          Map.entry("Ukrainian, Belarusian", "ҐЄІЇЎґєіїў"),
          Map.entry("Serbian, Macedonian", "ЂЉЊЋЏЃЌЅЈђљњћџѓќѕј"),
          Map.entry("signs", "„“”‘’–—…§©®€£¥°±×÷½¼²³µ№→←↑↓"));

  @Test
  void lettersOfEuropeanLanguages_areAllThere() {
    LANGUAGES.forEach(
        (language, letters) ->
            letters
                .codePoints()
                .mapToObj(Character::toString)
                .forEach(
                    sign ->
                        StrokeAlphabet.glyphs(sign)
                            .forEach(g -> assertTrue(g.known(), language + ": " + sign))));
  }

  @Test
  void accents_makeAnotherLetterThanWithout() {
    for (String pair : List.of("éeè", "ÜUÛ", "çcĉ", "йиӣ", "ğgģ", "ňnñ", "ďdđ")) {
      List<Glyph> glyphs = StrokeAlphabet.glyphs(pair);
      assertEquals(3, glyphs.size());
      assertTrue(glyphs.get(0).strokes().size() > glyphs.get(1).strokes().size(), pair);
    }
  }

  @Test
  void accents_standClearOfTheirLetter() {
    Glyph bare = StrokeAlphabet.glyphs("O").get(0);
    Glyph marked = StrokeAlphabet.glyphs("Ô").get(0);
    double[] accent = marked.strokes().get(marked.strokes().size() - 1);
    assertTrue(accent[1] > bare.extent(1)[1] + 0.5 && accent[5] > bare.extent(1)[1] + 0.5);
  }

  @Test
  void unknownSign_isABox() {
    assertFalse(StrokeAlphabet.glyphs("\u4e2d").get(0).known());
  }

  /** A capital R has its bowl at the upper right and its leg at the lower right. */
  @Test
  void capitals_standUprightAndUnmirrored() {
    Glyph r = StrokeAlphabet.glyphs("R").get(0);
    assertEquals(0, r.extent(0)[0]);
    assertEquals(0, r.extent(1)[0]);
    assertEquals(StrokeAlphabet.CAP_UNITS, r.extent(1)[1]);
    double[] bowl = r.strokes().get(0);
    assertEquals(List.of(0.0, 0.0, 0.0, 6.0), List.of(bowl[0], bowl[1], bowl[2], bowl[3]));
  }
}
