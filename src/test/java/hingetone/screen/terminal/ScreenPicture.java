package hingetone.screen.terminal;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Draws what a terminal shows as a PNG: {@code tmux capture-pane -e -p | ScreenPicture FILE.png
 * [light]}. Understands the styles that the screen sends: bold, faint, reverse, 16, 256 and true
 * colours.
 */
final class ScreenPicture {
  private static final Font FONT = new Font("DejaVu Sans Mono", Font.PLAIN, 15);
  private static final int[] CUBE = {0, 95, 135, 175, 215, 255};
  private static final Color[] SIXTEEN = {
    new Color(0x000000), new Color(0xCD0000), new Color(0x00CD00), new Color(0xCDCD00),
    new Color(0x0000EE), new Color(0xCD00CD), new Color(0x00CDCD), new Color(0xE5E5E5),
    new Color(0x7F7F7F), new Color(0xFF0000), new Color(0x00FF00), new Color(0xFFFF00),
    new Color(0x5C5CFF), new Color(0xFF00FF), new Color(0x00FFFF), new Color(0xFFFFFF)
  };

  private final Graphics2D pen;
  private final Color paper;
  private final Color ink;
  private final int width;
  private final int height;
  private final int ascent;
  private boolean bold;
  private boolean faint;
  private boolean reverse;
  private Color colour;

  private ScreenPicture(Graphics2D pen, Color paper, Color ink) {
    FontMetrics metrics = pen.getFontMetrics(FONT);
    this.pen = pen;
    this.paper = paper;
    this.ink = ink;
    this.width = metrics.charWidth('M');
    this.height = metrics.getAscent() + metrics.getDescent();
    this.ascent = metrics.getAscent();
    this.colour = ink;
  }

  public static void main(String[] args) throws IOException {
    System.setProperty("java.awt.headless", "true");
    String text = new String(System.in.readAllBytes(), StandardCharsets.UTF_8);
    boolean light = args.length > 1 && args[1].equals("light");
    List<String> lines = text.lines().toList();
    int columns =
        lines.stream().mapToInt(l -> l.replaceAll("\033\\[[0-9;]*m", "").length()).max().orElse(1);
    BufferedImage probe = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
    Color paper = light ? new Color(0xFDFDF8) : new Color(0x14161A);
    Color ink = light ? new Color(0x202020) : new Color(0xE4E4DC);
    ScreenPicture size = new ScreenPicture(probe.createGraphics(), paper, ink);
    BufferedImage image =
        new BufferedImage(
            (columns + 2) * size.width,
            (lines.size() + 1) * size.height,
            BufferedImage.TYPE_INT_RGB);
    new ScreenPicture(image.createGraphics(), paper, ink).draw(lines, image);
    ImageIO.write(image, "png", new File(args[0]));
  }

  private void draw(List<String> lines, BufferedImage image) {
    pen.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    pen.setColor(paper);
    pen.fillRect(0, 0, image.getWidth(), image.getHeight());
    int y = height / 2;
    for (String line : lines) {
      int x = width;
      int i = 0;
      while (i < line.length()) {
        if (line.startsWith("\033[", i)) {
          int end = line.indexOf('m', i);
          style(line.substring(i + 2, end));
          i = end + 1;
        } else {
          cell(x, y, line.codePointAt(i));
          i += Character.charCount(line.codePointAt(i));
          x += width;
        }
      }
      y += height;
    }
  }

  private void cell(int x, int y, int character) {
    Color fore = faint ? mix(colour, paper) : colour;
    pen.setColor(reverse ? fore : paper);
    pen.fillRect(x, y, width, height);
    pen.setColor(reverse ? paper : fore);
    if (character == '█' || character == '▀' || character == '▄') {
      int half = height / 2;
      int top = character == '▄' ? half : 0;
      pen.fillRect(
          x, y + top, width, character == '█' ? height : character == '▀' ? half : height - half);
    } else {
      pen.setFont(bold ? FONT.deriveFont(Font.BOLD) : FONT);
      pen.drawString(Character.toString(character), x, y + ascent);
    }
  }

  private static Color mix(Color a, Color b) {
    return new Color(
        (a.getRed() + b.getRed()) / 2,
        (a.getGreen() + b.getGreen()) / 2,
        (a.getBlue() + b.getBlue()) / 2);
  }

  private void style(String codes) {
    String[] parts = codes.isEmpty() ? new String[] {"0"} : codes.split(";");
    for (int i = 0; i < parts.length; i++) {
      int code = Integer.parseInt(parts[i]);
      if (code == 38 && parts[i + 1].equals("2")) {
        colour = new Color(number(parts, i + 2), number(parts, i + 3), number(parts, i + 4));
        i += 4;
      } else if (code == 38) {
        colour = indexed(number(parts, i + 2));
        i += 2;
      } else {
        simple(code);
      }
    }
  }

  private static int number(String[] parts, int index) {
    return Integer.parseInt(parts[index]);
  }

  private void simple(int code) {
    switch (code) {
      case 0 -> {
        bold = false;
        faint = false;
        reverse = false;
        colour = ink;
      }
      case 1 -> bold = true;
      case 2 -> faint = true;
      case 7 -> reverse = true;
      case 22 -> {
        bold = false;
        faint = false;
      }
      case 27 -> reverse = false;
      case 39 -> colour = ink;
      default -> {
        if (code >= 30 && code <= 37) {
          colour = SIXTEEN[code - 30];
        } else if (code >= 90 && code <= 97) {
          colour = SIXTEEN[code - 82];
        }
      }
    }
  }

  private static Color indexed(int index) {
    if (index < 16) {
      return SIXTEEN[index];
    }
    int n = index - 16;
    return new Color(CUBE[n / 36], CUBE[n / 6 % 6], CUBE[n % 6]);
  }
}
