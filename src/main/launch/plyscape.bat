@echo off
rem Runs plyscape with Java 17 or newer: the one that came with it (folder java), else that of JAVA_HOME, else that on the PATH.
rem PLYSCAPE_JAVA_OPTS adds options for Java, such as -Xmx8g.
rem
rem At the first run with a Java, its classes are laid out in an archive that Java maps in at start (a few seconds, once): beside
rem the jar, or in the user's cache where that can't be written. Another Java or another jar gets a new one.
setlocal DisableDelayedExpansion
for %%i in ("%~dp0..") do set "root=%%~fi"
set "lib=%root%\lib"
set "jar=%lib%\plyscape.jar"
if not exist "%jar%" (
  echo plyscape: the jar is missing: "%jar%"; unpack the whole of the release, and run its bin\plyscape.bat 1>&2
  exit /b 1
)

set "java=%root%\java\bin\java.exe"
if exist "%java%" goto found
if not defined JAVA_HOME goto path
set "java=%JAVA_HOME%\bin\java.exe"
if exist "%java%" goto found
echo plyscape: JAVA_HOME is "%JAVA_HOME%", which has no bin\java.exe; set it to a Java 17 or newer 1>&2
exit /b 1
:path
set "java="
for %%i in (java.exe) do set "java=%%~$PATH:i"
if defined java goto found
echo plyscape: needs Java 17 or newer: none on the PATH or in JAVA_HOME 1>&2
exit /b 1

:found
for %%i in ("%java%\..\..") do set "home=%%~fi"
set "version=x"
set "major=x"
if exist "%home%\release" for /f "usebackq tokens=1,2 delims==" %%i in ("%home%\release") do if "%%i"=="JAVA_VERSION" set "version=%%~j"
for /f "tokens=1 delims=.-+" %%i in ("%version%") do set "major=%%i"
if "%major%"=="x" goto archive
if %major% geq 17 goto archive
echo plyscape: needs Java 17 or newer: found %version% ("%java%"); set JAVA_HOME to a newer one 1>&2
exit /b 1

rem An archive holds for one Java and one jar, which the file beside it names.
:archive
set "name=plyscape-java%major%"
rem The library that reads protocol buffers uses memory in a way of which Java 24 and newer warn on stderr.
set "quiet="
if not "%major%"=="x" if %major% geq 23 set "quiet=--sun-misc-unsafe-memory-access=allow"
for %%i in ("%jar%") do set "made_of=%java% %version% %%~zi %%~ti"
set "cache=%LOCALAPPDATA%\plyscape"
set "place=%lib%"
call :holds
if defined holds goto run
set "place=%cache%"
call :holds
if defined holds goto run
if not exist "%lib%\plyscape.classes" goto run

set "place=%lib%"
call :note 2>nul
if defined noted goto make
set "place=%cache%"
if not exist "%cache%" mkdir "%cache%" 2>nul
call :note 2>nul
if not defined noted goto run
:make
if exist "%place%\%name%.jsa" del /f /q "%place%\%name%.jsa" 2>nul
"%java%" -Xshare:dump "-XX:SharedClassListFile=%lib%\plyscape.classes" "-XX:SharedArchiveFile=%place%\%name%.jsa" -Xlog:disable -cp "%jar%" >nul 2>&1

rem Java's second compiler pays only in long runs, for which plyscape starts a Java that has it.
:run
set "archive=%place%\%name%.jsa"
if not exist "%archive%" goto plain
"%java%" -XX:+IgnoreUnrecognizedVMOptions -XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000 -Dplyscape.compiler=first %quiet% -XX:+UseParallelGC -XX:InitialRAMPercentage=8 -Xshare:auto "-XX:SharedArchiveFile=%archive%" -Xlog:disable %PLYSCAPE_JAVA_OPTS% -jar "%jar%" %*
exit /b %ERRORLEVEL%
:plain
"%java%" -XX:+IgnoreUnrecognizedVMOptions -XX:TieredStopAtLevel=1 -XX:Tier3BackEdgeThreshold=4000 -Dplyscape.compiler=first %quiet% -XX:+UseParallelGC -XX:InitialRAMPercentage=8 -Xlog:disable %PLYSCAPE_JAVA_OPTS% -jar "%jar%" %*
exit /b %ERRORLEVEL%

rem Sets "holds" when the archive in "place" is of this Java and this jar.
:holds
set "holds="
set "of="
if exist "%place%\%name%.of" set /p of=<"%place%\%name%.of"
if not defined of exit /b 0
if %of%=="%made_of%" set "holds=yes"
exit /b 0

rem Sets "noted" when "place" can be written, and names there what its archive is of.
:note
set "noted="
>"%place%\%name%.of" echo "%made_of%" && set "noted=yes"
exit /b 0
