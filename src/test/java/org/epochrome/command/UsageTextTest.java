package org.epochrome.command;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong command lines are refused in the program's own texts. */
class UsageTextTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            combine --turnings;                              Unknown option|'--turnings'
            combin;                                          Unknown command|'combin'|combine
            aspect;                                          Missing|--body PLANET, --at UTC
            demo;                                            Missing|DIR
            combine --epoch;                                 '--epoch' needs a value (UTC)
            combine --threads 2 --threads 3 a.fits;          '--threads'|only once
            combine --threads two a.fits;                    '--threads'|'two' is not a whole number
            combine --pressure low a.fits;                   '--pressure'|'low' is not a number
            combine --quiet=perhaps a.fits;                  '--quiet'|'perhaps' is not true or false
            combine --mirrored perhaps a.fits;               '--mirrored'|'perhaps' is not one of yes, no, auto
            combine --site 3 a.fits;                         '--site'|'3' is not a site
            aspect --body mars --at 2031-05-02T21:14:05Z x;  Unexpected argument|'x'
            """)
    void areNamedInASentence(String line, String words) {
        Ran.of((Object[]) line.split(" ")).refuses(2, words);
    }
}
