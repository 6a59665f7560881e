#!/bin/sh
# Makes the pictures of docs/desktop.md from the program itself, without a display. Run in the project's folder after
# mvn -q test-compile; needs ImageMagick for the JPEGs, and the network once for the plugin that starts it.
set -e
shots() {
    mvn -q exec:exec -Dexec.classpathScope=test -Dexec.executable=java -Dexec.args="-Xmx3g -Djava.awt.headless=true \
        -Dprism.order=sw -Dglass.platform=Monocle -Dmonocle.platform=Headless -Dtestfx.robot=glass -Dtestfx.headless=true \
        -Dheadless.geometry=1280x800-32 -cp %classpath \
        org.epochrome.desktop.Portraits target/portraits/$1 1280 800 1 $1 $2"
}
shots DARK
shots LIGHT first-picture
shots NIGHT first-picture
for name in invitation setup plan question first-picture lines strip split saturn disk shift colour detail framing evidence \
    missing keys; do
    convert target/portraits/DARK/$name.png -quality 85 docs/pictures/desktop-$name.jpg
done
convert target/portraits/LIGHT/first-picture.png -quality 85 docs/pictures/desktop-light.jpg
convert target/portraits/NIGHT/first-picture.png -quality 85 docs/pictures/desktop-night.jpg
