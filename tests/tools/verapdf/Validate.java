import java.io.File;
import java.util.Map;
import java.util.TreeMap;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Holds PDF files against PDF/A-3b and PDF/UA-1 with veraPDF. For each file and profile it prints one line with the number
 * of checks, and one for each rule that failed, fields parted by tabs.
 */
public class Validate {
  private static final PDFAFlavour[] PROFILES = {PDFAFlavour.PDFA_3_B, PDFAFlavour.PDFUA_1};

  public static void main(String[] files) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    for (String file : files) for (PDFAFlavour profile : PROFILES) validate(file, profile);
  }

  private static void validate(String file, PDFAFlavour profile) throws Exception {
    try (PDFAParser parser = Foundries.defaultInstance().createParser(new File(file), profile)) {
      PDFAValidator validator = Foundries.defaultInstance().createValidator(profile, false);
      ValidationResult result = validator.validate(parser);
      System.out.println(String.join("\t", "checked", file, profile.getId(), "" + result.getTotalAssertions()));
      Map<String, String> failed = new TreeMap<>();
      for (TestAssertion one : result.getTestAssertions())
        if (one.getStatus() == TestAssertion.Status.FAILED)
          failed.putIfAbsent(
              one.getRuleId().getClause() + "-" + one.getRuleId().getTestNumber(),
              one.getMessage() + " at " + one.getLocation().getContext());
      for (Map.Entry<String, String> rule : failed.entrySet())
        System.out.println(String.join("\t", "failed", file, profile.getId(), rule.getKey(), rule.getValue().replaceAll("\\s+", " ")));
    }
  }
}
